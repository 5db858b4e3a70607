"""Number and seal the changes, and let the tables refuse to lose or rewrite a row."""

import django.db.models.deletion
from django.db import migrations, models

from farm.chain import NOTHING, SEALED, seal
from farm.guards import GuardChanges, GuardRecords

ROWS_A_STATEMENT = 500


def seal_changes(apps, schema_editor):
    """Chain every farm's changes in the order in which they were written."""
    farms = apps.get_model("farm", "Farm").objects.order_by("pk")
    heads = apps.get_model("farm", "ChangeHead").objects
    for farm in farms.iterator():
        number, digest = seal_farm(apps.get_model("farm", "Change"), farm)
        if number:
            heads.create(farm=farm, number=number, digest=digest)


def seal_farm(model, farm):
    number, last, sealed = 0, NOTHING, []
    for change in model.objects.filter(farm=farm).order_by("at", "pk").iterator():
        number += 1
        change.number, change.prev = number, last
        last = change.digest = seal({name: getattr(change, name) for name in SEALED})
        sealed.append(change)
        if len(sealed) == ROWS_A_STATEMENT:
            keep(model, sealed)
    keep(model, sealed)
    return number, last


def keep(model, sealed):
    model.objects.bulk_update(sealed, ["number", "prev", "digest"])
    sealed.clear()


class Migration(migrations.Migration):
    dependencies = [("farm", "0002_edges_of_fields")]

    operations = [
        migrations.CreateModel(
            name="ChangeHead",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True,
                        primary_key=True,
                        serialize=False,
                        verbose_name="ID",
                    ),
                ),
                ("number", models.PositiveBigIntegerField(default=0)),
                (
                    "digest",
                    models.CharField(blank=True, default="", max_length=64),
                ),
                (
                    "farm",
                    models.OneToOneField(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="change_head",
                        to="farm.farm",
                    ),
                ),
            ],
            options={
                "verbose_name": "last change",
                "verbose_name_plural": "last changes",
            },
        ),
        migrations.AddField(
            "change",
            "number",
            models.PositiveBigIntegerField(null=True, verbose_name="number"),
        ),
        migrations.AddField(
            "change",
            "prev",
            models.CharField(blank=True, default="", max_length=64),
            preserve_default=False,
        ),
        migrations.AddField(
            "change", "digest", models.CharField(max_length=64, null=True)
        ),
        migrations.RunPython(seal_changes, migrations.RunPython.noop),
        migrations.AlterField(
            "change", "number", models.PositiveBigIntegerField(verbose_name="number")
        ),
        migrations.AlterField(
            "change", "digest", models.CharField(max_length=64, unique=True)
        ),
        migrations.AlterField(
            "change",
            "verb",
            models.CharField(
                choices=[
                    ("wrote", "wrote"),
                    ("changed", "changed"),
                    ("voided", "voided"),
                    ("loaded", "loaded"),
                    ("reviewed", "reviewed"),
                ],
                max_length=8,
            ),
        ),
        migrations.AddConstraint(
            "change",
            models.UniqueConstraint(
                models.F("farm"), models.F("number"), name="change_number_once_a_farm"
            ),
        ),
        migrations.AddConstraint(
            "change",
            models.UniqueConstraint(
                models.F("farm"), models.F("prev"), name="change_follows_one_other"
            ),
        ),
        GuardChanges(["change"]),
        GuardRecords(["changehead", "edge", "field", "landstatement"]),
    ]
