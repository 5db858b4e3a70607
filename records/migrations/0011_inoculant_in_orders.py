"""Inoculant in its packets: where it is bought, and in which order."""

import django.db.models.deletion
from django.db import migrations, models

from farm.guards import GuardRecords


class Migration(migrations.Migration):

    dependencies = [
        ('farm', '0006_invitations_and_sign_ins'),
        ('records', '0010_why_an_order_was_overruled'),
    ]

    operations = [
        migrations.CreateModel(
            name='OrderDressing',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('for_seed', models.CharField(blank=True, max_length=200, verbose_name='for seed of')),
                ('needed_kg', models.FloatField(verbose_name='amount needed')),
                ('packet_kg', models.FloatField(blank=True, null=True, verbose_name='weight of a packet')),
                ('packets', models.PositiveIntegerField(blank=True, null=True, verbose_name='packets')),
                ('price', models.FloatField(blank=True, null=True, verbose_name='price of a packet')),
            ],
            options={
                'verbose_name': 'inoculant or treatment ordered',
                'verbose_name_plural': 'inoculants and treatments ordered',
            },
        ),
        migrations.AddField(
            model_name='seeddressing',
            name='packet_kg',
            field=models.FloatField(blank=True, null=True, verbose_name='weight of a packet'),
        ),
        migrations.AddField(
            model_name='seeddressing',
            name='packet_price',
            field=models.FloatField(blank=True, null=True, verbose_name='price of a packet'),
        ),
        migrations.AddField(
            model_name='seeddressing',
            name='supplier',
            field=models.ForeignKey(blank=True, null=True, on_delete=django.db.models.deletion.PROTECT, related_name='dressings', to='records.supplier', verbose_name='bought from'),
        ),
        migrations.AddConstraint(
            model_name='seeddressing',
            constraint=models.CheckConstraint(condition=models.Q(models.Q(('packet_kg', None), ('packet_kg__gt', 0), _connector='OR'), models.Q(('packet_price', None), ('packet_price__gte', 0), _connector='OR')), name='dressing_packet_has_a_weight', violation_error_message='A packet has a weight, and a price of nothing or more.'),
        ),
        migrations.AddField(
            model_name='orderdressing',
            name='order',
            field=models.ForeignKey(on_delete=django.db.models.deletion.CASCADE, related_name='dressings', to='records.seedorder'),
        ),
        migrations.AddField(
            model_name='orderdressing',
            name='product',
            field=models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='order_dressings', to='records.inputproduct', verbose_name='inoculant or treatment'),
        ),
        migrations.AddConstraint(
            model_name='orderdressing',
            constraint=models.CheckConstraint(condition=models.Q(('needed_kg__gt', 0), models.Q(('packet_kg', None), ('packet_kg__gt', 0), _connector='OR'), models.Q(('packets', None), ('packets__gte', 1), _connector='OR')), name='dressing_ordered_by_amount'),
        ),
        migrations.AddConstraint(
            model_name='orderdressing',
            constraint=models.CheckConstraint(condition=models.Q(('price', None), ('price__gte', 0), _connector='OR'), name='dressing_price_not_below_zero'),
        ),
        GuardRecords(["seeddressing"]),
    ]
