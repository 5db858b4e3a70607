"""The days whose records an inspector was invited to see."""

from django.db import migrations, models


class Migration(migrations.Migration):

    dependencies = [
        ('farm', '0007_language_of_a_person'),
    ]

    operations = [
        migrations.AddField(
            model_name='invitation',
            name='sees_from',
            field=models.DateField(blank=True, null=True, verbose_name='sees records from'),
        ),
        migrations.AddField(
            model_name='invitation',
            name='sees_to',
            field=models.DateField(blank=True, null=True, verbose_name='sees records to'),
        ),
        migrations.AddField(
            model_name='membership',
            name='sees_from',
            field=models.DateField(blank=True, null=True, verbose_name='sees records from'),
        ),
        migrations.AddField(
            model_name='membership',
            name='sees_to',
            field=models.DateField(blank=True, null=True, verbose_name='sees records to'),
        ),
        migrations.AddConstraint(
            model_name='membership',
            constraint=models.CheckConstraint(condition=models.Q(models.Q(('sees_from', None), ('sees_to', None)), ('sees_to__gte', models.F('sees_from')), _connector='OR'), name='membership_period_is_whole', violation_error_message='The period ends before it begins.'),
        ),
    ]
