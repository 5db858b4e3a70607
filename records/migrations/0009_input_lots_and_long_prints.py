"""Lots of inputs, and long papers that print while one does something else."""

import django.db.models.deletion
import uuid
from django.conf import settings
from django.db import migrations, models

from farm.guards import GuardRecords


class Migration(migrations.Migration):

    dependencies = [
        ('farm', '0005_money_of_the_farm'),
        ('records', '0008_mixes_weeds_and_dressings'),
        migrations.swappable_dependency(settings.AUTH_USER_MODEL),
    ]

    operations = [
        migrations.CreateModel(
            name='InputLot',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('client_key', models.UUIDField(default=uuid.uuid4, editable=False, unique=True)),
                ('notes', models.TextField(blank=True, max_length=4000, verbose_name='notes')),
                ('done_by', models.CharField(blank=True, max_length=120, verbose_name='done by')),
                ('written_at', models.DateTimeField(editable=False)),
                ('voided_at', models.DateTimeField(editable=False, null=True)),
                ('void_reason', models.CharField(blank=True, editable=False, max_length=500)),
                ('lot_number', models.CharField(max_length=60, verbose_name='lot number')),
                ('supplier', models.CharField(blank=True, max_length=120, verbose_name='supplier')),
                ('received_on', models.DateField(verbose_name='received on')),
                ('measure', models.CharField(choices=[('mass', 'by weight'), ('volume', 'by volume')], editable=False, max_length=6)),
                ('amount_si', models.FloatField(verbose_name='amount')),
                ('invoice', models.CharField(blank=True, max_length=60, verbose_name='invoice')),
                ('farm', models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='%(class)ss', to='farm.farm')),
                ('product', models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='lots', to='records.inputproduct', verbose_name='product')),
                ('voided_by', models.ForeignKey(editable=False, null=True, on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL)),
                ('written_by', models.ForeignKey(editable=False, on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL)),
            ],
            options={
                'verbose_name': 'lot of an input',
                'verbose_name_plural': 'lots of inputs',
                'abstract': False,
                'constraints': [models.CheckConstraint(condition=models.Q(models.Q(('void_reason', ''), ('voided_at', None), ('voided_by', None)), models.Q(('voided_at__isnull', False), ('voided_by__isnull', False), models.Q(('void_reason', ''), _negated=True)), _connector='OR'), name='inputlot_void_is_whole'), models.CheckConstraint(condition=models.Q(('amount_si__gt', 0)), name='input_lot_is_measured', violation_error_message='An amount is more than nothing.'), models.UniqueConstraint(models.F('farm'), models.F('product'), models.F('lot_number'), condition=models.Q(('voided_at', None)), name='input_lot_once_a_product', violation_error_message='This lot is already written down.')],
            },
        ),
        migrations.CreateModel(
            name='PrintJob',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('key', models.UUIDField(default=uuid.uuid4, editable=False, unique=True)),
                ('paper', models.CharField(choices=[('season', 'season report'), ('packet', 'papers for certification')], max_length=8, verbose_name='paper')),
                ('year', models.PositiveSmallIntegerField(verbose_name='season')),
                ('today', models.DateField()),
                ('query', models.CharField(blank=True, max_length=1000)),
                ('state', models.CharField(choices=[('waiting', 'waiting'), ('running', 'being printed'), ('done', 'finished'), ('failed', 'not printed'), ('stopped', 'stopped')], default='waiting', max_length=8)),
                ('done', models.PositiveIntegerField(default=0)),
                ('total', models.PositiveIntegerField(default=0)),
                ('tries', models.PositiveSmallIntegerField(default=0)),
                ('beat_at', models.DateTimeField(null=True)),
                ('asked_at', models.DateTimeField()),
                ('trouble', models.CharField(blank=True, max_length=500)),
                ('asked_by', models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL)),
                ('farm', models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='print_jobs', to='farm.farm')),
            ],
            options={
                'verbose_name': 'print under way',
                'verbose_name_plural': 'prints under way',
                'constraints': [models.CheckConstraint(condition=models.Q(('total', 0), ('done__lte', models.F('total')), _connector='OR'), name='print_job_is_no_further_than_its_end')],
            },
        ),
        GuardRecords(["inputlot"]),
    ]
