"""Findings as they stood on a day, and what the certifier was told of."""

import django.db.models.deletion
import uuid
from django.conf import settings
from django.db import migrations, models

from farm.guards import GuardRecords


class Migration(migrations.Migration):

    dependencies = [
        ('farm', '0008_period_of_an_inspector'),
        ('records', '0013_measures_are_named'),
        migrations.swappable_dependency(settings.AUTH_USER_MODEL),
    ]

    operations = [
        migrations.CreateModel(
            name='ChangeTold',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('client_key', models.UUIDField(default=uuid.uuid4, editable=False, unique=True)),
                ('notes', models.TextField(blank=True, max_length=4000, verbose_name='notes')),
                ('done_by', models.CharField(blank=True, max_length=120, verbose_name='done by')),
                ('written_at', models.DateTimeField(editable=False)),
                ('voided_at', models.DateTimeField(editable=False, null=True)),
                ('void_reason', models.CharField(blank=True, editable=False, max_length=500)),
                ('key', models.CharField(max_length=200, verbose_name='change')),
                ('change', models.CharField(max_length=300, verbose_name='what changed')),
                ('told_on', models.DateField(verbose_name='certifier told on')),
                ('how', models.CharField(help_text='By letter, telephone or form.', max_length=200, verbose_name='how')),
                ('farm', models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='%(class)ss', to='farm.farm')),
                ('voided_by', models.ForeignKey(editable=False, null=True, on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL)),
                ('written_by', models.ForeignKey(editable=False, on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL)),
            ],
            options={
                'verbose_name': 'change told to the certifier',
                'verbose_name_plural': 'changes told to the certifier',
                'abstract': False,
                'constraints': [models.CheckConstraint(condition=models.Q(models.Q(('void_reason', ''), ('voided_at', None), ('voided_by', None)), models.Q(('voided_at__isnull', False), ('voided_by__isnull', False), models.Q(('void_reason', ''), _negated=True)), _connector='OR'), name='changetold_void_is_whole'), models.UniqueConstraint(models.F('farm'), models.F('key'), condition=models.Q(('voided_at', None)), name='change_told_once', violation_error_message='That the certifier was told of this is already written down.')],
            },
        ),
        migrations.CreateModel(
            name='KeptFindings',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('year', models.PositiveSmallIntegerField(verbose_name='season')),
                ('kept_at', models.DateTimeField(verbose_name='kept')),
                ('why', models.CharField(choices=[('asked', 'kept when somebody asked for it'), ('printed', 'kept when the papers were printed')], max_length=7, verbose_name='why')),
                ('lines', models.JSONField(blank=True, default=dict, verbose_name='findings')),
                ('farm', models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='kept_findings', to='farm.farm')),
                ('kept_by', models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL)),
            ],
            options={
                'verbose_name': 'kept list of findings',
                'verbose_name_plural': 'kept lists of findings',
                'indexes': [models.Index(fields=['farm', 'year', '-kept_at'], name='findings_by_time')],
            },
        ),
        GuardRecords(["changetold"]),
    ]
