"""What is in each mix that is ordered."""

import django.core.validators
import django.db.models.deletion
from django.db import migrations, models


class Migration(migrations.Migration):

    dependencies = [
        ('records', '0014_findings_kept_and_changes_told'),
    ]

    operations = [
        migrations.CreateModel(
            name='OrderComponent',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('line', models.PositiveSmallIntegerField(verbose_name='line of the order')),
                ('pls_share', models.FloatField(blank=True, null=True, validators=[django.core.validators.MinValueValidator(0.0), django.core.validators.MaxValueValidator(1.0)], verbose_name='pure live seed in the whole')),
                ('kind', models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='order_components', to='records.kind', verbose_name='kind')),
                ('order', models.ForeignKey(on_delete=django.db.models.deletion.CASCADE, related_name='components', to='records.seedorder')),
            ],
            options={
                'verbose_name': 'component of a mix ordered',
                'verbose_name_plural': 'components of mixes ordered',
                'constraints': [models.CheckConstraint(condition=models.Q(('line__gte', 1)), name='component_of_a_line_ordered'), models.CheckConstraint(condition=models.Q(('pls_share', None), models.Q(('pls_share__gt', 0), ('pls_share__lte', 1)), _connector='OR'), name='component_ordered_is_a_share'), models.UniqueConstraint(models.F('order'), models.F('line'), models.F('kind'), name='component_ordered_once_a_line')],
            },
        ),
    ]
