"""Who of the owner’s family works on the farm."""

from django.db import migrations, models


class Migration(migrations.Migration):

    dependencies = [
        ('farm', '0009_looks_and_putting_back'),
    ]

    operations = [
        migrations.AddField(
            model_name='farm',
            name='family',
            field=models.TextField(blank=True, help_text='One name a line, written as under “done by”. Rules on training of workers leave out the owner and these people.', max_length=500, verbose_name='owner’s close family who work here'),
        ),
    ]
