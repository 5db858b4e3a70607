"""Let the tables themselves refuse to lose a record."""

from django.db import migrations

from farm.guards import GuardRecords


class Migration(migrations.Migration):
    dependencies = [
        ("farm", "0003_sealed_changes"),
        ("records", "0002_harvests_compost_upkeep_and_own_values"),
    ]

    operations = [
        GuardRecords(
            [
                "application",
                "biomasssample",
                "cleanout",
                "compostbatch",
                "equipment",
                "farmfigure",
                "grazing",
                "harvestlot",
                "incident",
                "inputproduct",
                "irrigation",
                "observation",
                "ownassumption",
                "planting",
                "sale",
                "seedlot",
                "seedsearch",
                "soiltest",
                "stockcount",
                "storage",
                "supplier",
                "termination",
                "training",
                "weatherstation",
            ]
        )
    ]
