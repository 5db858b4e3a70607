"""Duties with what settles them, and private addresses of calendars."""

import django.db.models.deletion
import uuid
from django.conf import settings
from django.db import migrations, models

from farm.guards import GuardRecords


class Migration(migrations.Migration):

    dependencies = [
        ('farm', '0003_sealed_changes'),
        ('records', '0005_seed_offers_orders_and_moves'),
        migrations.swappable_dependency(settings.AUTH_USER_MODEL),
    ]

    operations = [
        migrations.CreateModel(
            name='CalendarAddress',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('token_hash', models.CharField(max_length=64, unique=True)),
                ('made_at', models.DateTimeField()),
                ('revoked_at', models.DateTimeField(null=True)),
                ('farm', models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='calendar_addresses', to='farm.farm')),
                ('user', models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='calendar_addresses', to=settings.AUTH_USER_MODEL)),
            ],
            options={
                'verbose_name': 'calendar address',
                'verbose_name_plural': 'calendar addresses',
                'constraints': [models.UniqueConstraint(models.F('farm'), models.F('user'), condition=models.Q(('revoked_at', None)), name='one_calendar_address_a_person')],
            },
        ),
        migrations.CreateModel(
            name='Duty',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('client_key', models.UUIDField(default=uuid.uuid4, editable=False, unique=True)),
                ('notes', models.TextField(blank=True, max_length=4000, verbose_name='notes')),
                ('done_by', models.CharField(blank=True, max_length=120, verbose_name='done by')),
                ('written_at', models.DateTimeField(editable=False)),
                ('voided_at', models.DateTimeField(editable=False, null=True)),
                ('void_reason', models.CharField(blank=True, editable=False, max_length=500)),
                ('what', models.CharField(choices=[('sow', 'sow'), ('look', 'look at it'), ('cut', 'cut it, to grow back'), ('end', 'end it'), ('work_in', 'work it in'), ('plant', 'plant the next crop'), ('other', 'something else')], max_length=8, verbose_name='what')),
                ('words', models.CharField(blank=True, max_length=160, verbose_name='in words')),
                ('earliest_on', models.DateField(verbose_name='from')),
                ('latest_on', models.DateField(verbose_name='by')),
                ('from_window', models.CharField(blank=True, choices=[('sow', 'sowing'), ('cut', 'cutting, to grow back'), ('end_mowing', 'ending by mowing'), ('end_working_in', 'ending by working in'), ('frost_kill', 'killing frost'), ('plant_back', 'the next crop')], max_length=16, verbose_name='from which window')),
                ('done_on', models.DateField(blank=True, null=True, verbose_name='done on, by hand')),
                ('ending', models.ForeignKey(editable=False, null=True, on_delete=django.db.models.deletion.PROTECT, related_name='+', to='records.termination', verbose_name='settled by this end')),
                ('farm', models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='%(class)ss', to='farm.farm')),
                ('field', models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='duties', to='farm.field', verbose_name='field')),
                ('planting', models.ForeignKey(blank=True, null=True, on_delete=django.db.models.deletion.PROTECT, related_name='duties', to='records.planting', verbose_name='planting')),
                ('sighting', models.ForeignKey(editable=False, null=True, on_delete=django.db.models.deletion.PROTECT, related_name='+', to='records.observation', verbose_name='settled by this observation')),
                ('sowing', models.ForeignKey(editable=False, null=True, on_delete=django.db.models.deletion.PROTECT, related_name='+', to='records.planting', verbose_name='settled by this planting')),
                ('voided_by', models.ForeignKey(editable=False, null=True, on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL)),
                ('who_for', models.ForeignKey(blank=True, null=True, on_delete=django.db.models.deletion.PROTECT, related_name='duties', to=settings.AUTH_USER_MODEL, verbose_name='for whom')),
                ('written_by', models.ForeignKey(editable=False, on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL)),
            ],
            options={
                'verbose_name': 'duty',
                'verbose_name_plural': 'duties',
                'abstract': False,
                'indexes': [models.Index(fields=['farm', 'latest_on'], name='duty_by_day')],
                'constraints': [models.CheckConstraint(condition=models.Q(models.Q(('void_reason', ''), ('voided_at', None), ('voided_by', None)), models.Q(('voided_at__isnull', False), ('voided_by__isnull', False), models.Q(('void_reason', ''), _negated=True)), _connector='OR'), name='duty_void_is_whole'), models.CheckConstraint(condition=models.Q(('latest_on__gte', models.F('earliest_on'))), name='duty_days_in_order', violation_error_message='It would be over before it begins.'), models.CheckConstraint(condition=models.Q(models.Q(('what', 'other'), _negated=True), models.Q(('words', ''), _negated=True), _connector='OR'), name='duty_says_what', violation_error_message='Say in words what is to be done.')],
            },
        ),
        GuardRecords(['duty']),
    ]
