"""Rules followed, the certifier's numbers, replies, prints, and what rules ask."""

import django.core.validators
import django.db.models.deletion
import uuid
from django.conf import settings
from django.db import migrations, models

from farm.guards import GuardChanges, GuardRecords


class Migration(migrations.Migration):
    dependencies = [
        ("farm", "0004_looks_of_inspectors"),
        ("records", "0006_duties_and_calendars"),
        migrations.swappable_dependency(settings.AUTH_USER_MODEL),
    ]

    operations = [
        migrations.AddField(
            model_name="application",
            name="posted_on",
            field=models.DateField(
                blank=True, null=True, verbose_name="posted for the crew on"
            ),
        ),
        migrations.AddField(
            model_name="application",
            name="posted_time",
            field=models.TimeField(blank=True, null=True, verbose_name="posted at"),
        ),
        migrations.AddField(
            model_name="harvestlot",
            name="touches_soil",
            field=models.BooleanField(
                blank=True, null=True, verbose_name="the part eaten touches the soil"
            ),
        ),
        migrations.AddField(
            model_name="inputproduct",
            name="approved_on",
            field=models.DateField(blank=True, null=True, verbose_name="approved on"),
        ),
        migrations.AddField(
            model_name="inputproduct",
            name="plant_back_months",
            field=models.FloatField(
                blank=True,
                null=True,
                validators=[
                    django.core.validators.MinValueValidator(0.0),
                    django.core.validators.MaxValueValidator(120.0),
                ],
                verbose_name="wait on the label before feed or grain, months",
            ),
        ),
        migrations.AlterField(
            model_name="termination",
            name="method",
            field=models.CharField(
                choices=[
                    ("mown", "mown"),
                    ("flail_mown", "flail-mown"),
                    ("roller_crimped", "roller-crimped"),
                    ("tilled_in", "tilled in"),
                    ("undercut", "undercut"),
                    ("tarped", "tarped"),
                    ("grazed", "grazed"),
                    ("frost_killed", "frost-killed"),
                    ("hand_cut", "hand-cut"),
                    ("sprayed", "sprayed"),
                    ("harvested", "harvested"),
                    ("burned", "burned"),
                ],
                max_length=14,
                verbose_name="how",
            ),
        ),
        migrations.CreateModel(
            name="CertifierNumber",
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
                (
                    "client_key",
                    models.UUIDField(default=uuid.uuid4, editable=False, unique=True),
                ),
                (
                    "notes",
                    models.TextField(blank=True, max_length=4000, verbose_name="notes"),
                ),
                (
                    "done_by",
                    models.CharField(
                        blank=True, max_length=120, verbose_name="done by"
                    ),
                ),
                ("written_at", models.DateTimeField(editable=False)),
                ("voided_at", models.DateTimeField(editable=False, null=True)),
                (
                    "void_reason",
                    models.CharField(blank=True, editable=False, max_length=500),
                ),
                ("key", models.CharField(max_length=120, verbose_name="rule")),
                ("value", models.FloatField(verbose_name="value")),
                ("low", models.FloatField(verbose_name="no less than")),
                ("high", models.FloatField(verbose_name="no more than")),
                (
                    "note",
                    models.CharField(
                        help_text="Who said so, when, and for what.",
                        max_length=300,
                        verbose_name="what the certifier said",
                    ),
                ),
                (
                    "document",
                    models.CharField(
                        help_text="Where it can be found.",
                        max_length=200,
                        verbose_name="letter or paper",
                    ),
                ),
                (
                    "farm",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="%(class)ss",
                        to="farm.farm",
                    ),
                ),
                (
                    "voided_by",
                    models.ForeignKey(
                        editable=False,
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
                (
                    "written_by",
                    models.ForeignKey(
                        editable=False,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
            ],
            options={
                "verbose_name": "number of the certifier’s own",
                "verbose_name_plural": "numbers of the certifier’s own",
                "abstract": False,
                "constraints": [
                    models.CheckConstraint(
                        condition=models.Q(
                            models.Q(
                                ("void_reason", ""),
                                ("voided_at", None),
                                ("voided_by", None),
                            ),
                            models.Q(
                                ("voided_at__isnull", False),
                                ("voided_by__isnull", False),
                                models.Q(("void_reason", ""), _negated=True),
                            ),
                            _connector="OR",
                        ),
                        name="certifiernumber_void_is_whole",
                    ),
                    models.CheckConstraint(
                        condition=models.Q(
                            ("value__gte", models.F("low")),
                            ("value__lte", models.F("high")),
                        ),
                        name="certifier_number_in_range",
                        violation_error_message="The value lies outside the range.",
                    ),
                    models.UniqueConstraint(
                        models.F("farm"),
                        models.F("key"),
                        condition=models.Q(("voided_at", None)),
                        name="certifier_number_once",
                        violation_error_message="The certifier’s number is already written down. Change that one.",
                    ),
                ],
            },
        ),
        migrations.CreateModel(
            name="FindingReply",
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
                (
                    "client_key",
                    models.UUIDField(default=uuid.uuid4, editable=False, unique=True),
                ),
                (
                    "notes",
                    models.TextField(blank=True, max_length=4000, verbose_name="notes"),
                ),
                (
                    "done_by",
                    models.CharField(
                        blank=True, max_length=120, verbose_name="done by"
                    ),
                ),
                ("written_at", models.DateTimeField(editable=False)),
                ("voided_at", models.DateTimeField(editable=False, null=True)),
                (
                    "void_reason",
                    models.CharField(blank=True, editable=False, max_length=500),
                ),
                ("key", models.CharField(max_length=160, verbose_name="finding")),
                (
                    "finding",
                    models.CharField(max_length=500, verbose_name="what was found"),
                ),
                ("reply", models.TextField(max_length=1000, verbose_name="reply")),
                ("replied_on", models.DateField(verbose_name="replied on")),
                (
                    "farm",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="%(class)ss",
                        to="farm.farm",
                    ),
                ),
                (
                    "voided_by",
                    models.ForeignKey(
                        editable=False,
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
                (
                    "written_by",
                    models.ForeignKey(
                        editable=False,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
            ],
            options={
                "verbose_name": "reply to a finding",
                "verbose_name_plural": "replies to findings",
                "abstract": False,
                "constraints": [
                    models.CheckConstraint(
                        condition=models.Q(
                            models.Q(
                                ("void_reason", ""),
                                ("voided_at", None),
                                ("voided_by", None),
                            ),
                            models.Q(
                                ("voided_at__isnull", False),
                                ("voided_by__isnull", False),
                                models.Q(("void_reason", ""), _negated=True),
                            ),
                            _connector="OR",
                        ),
                        name="findingreply_void_is_whole",
                    ),
                    models.UniqueConstraint(
                        models.F("farm"),
                        models.F("key"),
                        condition=models.Q(("voided_at", None)),
                        name="finding_replied_once",
                        violation_error_message="A reply to this finding is already written down. Change that one.",
                    ),
                ],
            },
        ),
        migrations.CreateModel(
            name="PrintedPaper",
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
                ("name", models.CharField(max_length=120, verbose_name="paper")),
                ("year", models.PositiveSmallIntegerField(verbose_name="season")),
                (
                    "sections",
                    models.CharField(blank=True, max_length=400, verbose_name="parts"),
                ),
                ("sha256", models.CharField(max_length=64)),
                ("bytes", models.PositiveIntegerField(verbose_name="size in bytes")),
                ("printed_at", models.DateTimeField(verbose_name="printed")),
                (
                    "farm",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="prints",
                        to="farm.farm",
                    ),
                ),
                (
                    "printed_by",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
            ],
            options={
                "verbose_name": "printed paper",
                "verbose_name_plural": "printed papers",
                "constraints": [
                    models.UniqueConstraint(
                        models.F("farm"), models.F("sha256"), name="paper_printed_once"
                    )
                ],
            },
        ),
        migrations.CreateModel(
            name="RulesFollowed",
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
                (
                    "client_key",
                    models.UUIDField(default=uuid.uuid4, editable=False, unique=True),
                ),
                (
                    "notes",
                    models.TextField(blank=True, max_length=4000, verbose_name="notes"),
                ),
                (
                    "done_by",
                    models.CharField(
                        blank=True, max_length=120, verbose_name="done by"
                    ),
                ),
                ("written_at", models.DateTimeField(editable=False)),
                ("voided_at", models.DateTimeField(editable=False, null=True)),
                (
                    "void_reason",
                    models.CharField(blank=True, editable=False, max_length=500),
                ),
                (
                    "which",
                    models.CharField(
                        choices=[
                            ("workers", "worker protection, 40 CFR 170"),
                            ("restricted", "restricted-use pesticides, 7 CFR 110"),
                            ("food", "produce safety, 21 CFR 112"),
                            ("cover_crop", "cover crop practice, NRCS 340"),
                            ("insurance", "termination guideline for insured dry land"),
                            ("seed_law", "seed tags, Federal Seed Act"),
                        ],
                        max_length=12,
                        verbose_name="rules",
                    ),
                ),
                ("since", models.DateField(verbose_name="followed since")),
                (
                    "until",
                    models.DateField(
                        blank=True, null=True, verbose_name="followed until"
                    ),
                ),
                (
                    "farm",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="%(class)ss",
                        to="farm.farm",
                    ),
                ),
                (
                    "voided_by",
                    models.ForeignKey(
                        editable=False,
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
                (
                    "written_by",
                    models.ForeignKey(
                        editable=False,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
            ],
            options={
                "verbose_name": "set of rules followed",
                "verbose_name_plural": "sets of rules followed",
                "abstract": False,
                "constraints": [
                    models.CheckConstraint(
                        condition=models.Q(
                            models.Q(
                                ("void_reason", ""),
                                ("voided_at", None),
                                ("voided_by", None),
                            ),
                            models.Q(
                                ("voided_at__isnull", False),
                                ("voided_by__isnull", False),
                                models.Q(("void_reason", ""), _negated=True),
                            ),
                            _connector="OR",
                        ),
                        name="rulesfollowed_void_is_whole",
                    ),
                    models.CheckConstraint(
                        condition=models.Q(
                            ("until", None),
                            ("until__gte", models.F("since")),
                            _connector="OR",
                        ),
                        name="rules_end_after_they_begin",
                        violation_error_message="It would be over before it begins.",
                    ),
                ],
            },
        ),
        GuardRecords(
            [
                "application",
                "certifiernumber",
                "findingreply",
                "harvestlot",
                "inputproduct",
                "rulesfollowed",
                "termination",
            ]
        ),
        GuardChanges(["printedpaper"]),
    ]
