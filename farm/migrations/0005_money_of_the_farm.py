"""The money every price of a farm is in, by the units it reads so far."""

import django.core.validators
from django.db import migrations, models


MONEY = {"us": "USD", "metric": "EUR"}


def by_units(apps, schema_editor):
    farms = apps.get_model("farm", "Farm").objects.filter(currency="")
    for units, currency in MONEY.items():
        farms.filter(units=units).update(currency=currency)


class Migration(migrations.Migration):

    dependencies = [
        ('farm', '0004_looks_of_inspectors'),
    ]

    operations = [
        migrations.AddField(
            model_name='farm',
            name='currency',
            field=models.CharField(blank=True, help_text='Three letters, as ISO 4217 has them. Every price is in it.', max_length=3, validators=[django.core.validators.RegexValidator('^[A-Z]{3}\\Z', 'Three capital letters, as ISO 4217 has them: USD, CAD, EUR.')], verbose_name='money'),
        ),
        migrations.RunPython(by_units, migrations.RunPython.noop),
    ]
