"""Licences of applicators, statements on engineered seed, subjects of training."""

import django.db.models.deletion
import uuid
from django.conf import settings
from django.db import migrations, models

from farm.guards import GuardRecords


class Migration(migrations.Migration):

    dependencies = [
        ('farm', '0010_family_of_the_owner'),
        ('records', '0015_components_of_mixes_ordered'),
        migrations.swappable_dependency(settings.AUTH_USER_MODEL),
    ]

    operations = [
        migrations.CreateModel(
            name='ApplicatorLicence',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('client_key', models.UUIDField(default=uuid.uuid4, editable=False, unique=True)),
                ('notes', models.TextField(blank=True, max_length=4000, verbose_name='notes')),
                ('done_by', models.CharField(blank=True, max_length=120, verbose_name='done by')),
                ('written_at', models.DateTimeField(editable=False)),
                ('voided_at', models.DateTimeField(editable=False, null=True)),
                ('void_reason', models.CharField(blank=True, editable=False, max_length=500)),
                ('holder', models.CharField(max_length=120, verbose_name='name on the licence')),
                ('number', models.CharField(max_length=60, verbose_name='number')),
                ('state', models.CharField(max_length=40, verbose_name='State')),
                ('category', models.CharField(blank=True, max_length=120, verbose_name='category')),
                ('since', models.DateField(blank=True, null=True, verbose_name='holds from')),
                ('until', models.DateField(verbose_name='holds until')),
            ],
            options={
                'verbose_name': 'applicator’s licence',
                'verbose_name_plural': 'applicators’ licences',
                'abstract': False,
            },
        ),
        migrations.AddField(
            model_name='seedlot',
            name='non_gmo',
            field=models.CharField(blank=True, choices=[('written', 'written statement'), ('test', 'test of a sample')], max_length=7, verbose_name='shown not to be engineered, by'),
        ),
        migrations.AddField(
            model_name='seedlot',
            name='non_gmo_on',
            field=models.DateField(blank=True, null=True, verbose_name='date of that statement or test'),
        ),
        migrations.AddField(
            model_name='training',
            name='subject',
            field=models.CharField(choices=[('workers', 'worker protection where something was sprayed'), ('food', 'food safety'), ('other', 'something else')], default='other', max_length=7, verbose_name='what it counts as'),
        ),
        migrations.AddConstraint(
            model_name='seedlot',
            constraint=models.CheckConstraint(condition=models.Q(models.Q(('non_gmo', ''), ('non_gmo_on', None)), models.Q(models.Q(('non_gmo', ''), _negated=True), ('non_gmo_on__isnull', False)), _connector='OR'), name='lot_non_gmo_has_its_day', violation_error_message='Say both: by what it is shown, and of which day that is.'),
        ),
        migrations.AddField(
            model_name='applicatorlicence',
            name='farm',
            field=models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='%(class)ss', to='farm.farm'),
        ),
        migrations.AddField(
            model_name='applicatorlicence',
            name='voided_by',
            field=models.ForeignKey(editable=False, null=True, on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL),
        ),
        migrations.AddField(
            model_name='applicatorlicence',
            name='written_by',
            field=models.ForeignKey(editable=False, on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL),
        ),
        migrations.AddConstraint(
            model_name='applicatorlicence',
            constraint=models.CheckConstraint(condition=models.Q(models.Q(('void_reason', ''), ('voided_at', None), ('voided_by', None)), models.Q(('voided_at__isnull', False), ('voided_by__isnull', False), models.Q(('void_reason', ''), _negated=True)), _connector='OR'), name='applicatorlicence_void_is_whole'),
        ),
        migrations.AddConstraint(
            model_name='applicatorlicence',
            constraint=models.CheckConstraint(condition=models.Q(('since', None), ('until__gte', models.F('since')), _connector='OR'), name='licence_ends_after_it_begins', violation_error_message='It would be over before it begins.'),
        ),
        migrations.AddConstraint(
            model_name='applicatorlicence',
            constraint=models.UniqueConstraint(models.F('farm'), models.F('state'), models.F('number'), models.F('until'), condition=models.Q(('voided_at', None)), name='licence_once_a_term', violation_error_message='This licence is already written down.'),
        ),
        GuardRecords(["applicatorlicence", "seedlot", "training"]),
    ]
