"""Room for why an order is not the cheapest."""

from django.db import migrations, models

from farm.guards import GuardRecords


class Migration(migrations.Migration):

    dependencies = [
        ('records', '0009_input_lots_and_long_prints'),
    ]

    operations = [
        migrations.AddField(
            model_name='seedorder',
            name='overruled',
            field=models.CharField(blank=True, max_length=600, verbose_name='what was overruled, and why'),
        ),
        GuardRecords(["seedorder"]),
    ]
