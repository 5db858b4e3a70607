"""Every look of an inspector, only ever added."""

import django.db.models.deletion
from django.conf import settings
from django.db import migrations, models

from farm.guards import GuardChanges


class Migration(migrations.Migration):
    dependencies = [
        ("farm", "0003_sealed_changes"),
    ]

    operations = [
        migrations.CreateModel(
            name="Look",
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
                ("at", models.DateTimeField(verbose_name="when")),
                ("path", models.CharField(max_length=300, verbose_name="page")),
                (
                    "by",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="looks",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
                (
                    "farm",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="looks",
                        to="farm.farm",
                    ),
                ),
            ],
            options={
                "verbose_name": "look",
                "verbose_name_plural": "looks",
                "indexes": [models.Index(fields=["farm", "-at"], name="look_by_time")],
            },
        ),
        GuardChanges(["look"]),
    ]
