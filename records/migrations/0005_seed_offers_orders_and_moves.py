"""Offers, orders and moves of seed, mixes by their tags, and calibrations."""

import django.core.validators
import django.db.models.deletion
import django.db.models.expressions
import uuid
from django.conf import settings
from django.db import migrations, models

from farm.guards import GuardRecords


class Migration(migrations.Migration):

    dependencies = [
        ('farm', '0003_sealed_changes'),
        ('records', '0004_pictures_and_papers'),
        migrations.swappable_dependency(settings.AUTH_USER_MODEL),
    ]

    operations = [
        migrations.CreateModel(
            name='Calibration',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('client_key', models.UUIDField(default=uuid.uuid4, editable=False, unique=True)),
                ('notes', models.TextField(blank=True, max_length=4000, verbose_name='notes')),
                ('done_by', models.CharField(blank=True, max_length=120, verbose_name='done by')),
                ('written_at', models.DateTimeField(editable=False)),
                ('voided_at', models.DateTimeField(editable=False, null=True)),
                ('void_reason', models.CharField(blank=True, editable=False, max_length=500)),
                ('calibrated_on', models.DateField(verbose_name='calibrated on')),
                ('setting', models.CharField(max_length=120, verbose_name='setting')),
                ('caught_kg', models.FloatField(verbose_name='seed caught')),
                ('distance_m', models.FloatField(blank=True, null=True, verbose_name='distance')),
                ('row_width_m', models.FloatField(blank=True, null=True, verbose_name='row spacing')),
                ('rows', models.PositiveSmallIntegerField(blank=True, null=True, verbose_name='rows caught')),
                ('area_m2', models.FloatField(blank=True, null=True, verbose_name='or area covered')),
                ('wanted_kg_m2', models.FloatField(blank=True, null=True, verbose_name='rate wanted')),
            ],
            options={
                'verbose_name': 'calibration',
                'verbose_name_plural': 'calibrations',
                'abstract': False,
            },
        ),
        migrations.CreateModel(
            name='LotComponent',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('variety', models.CharField(blank=True, max_length=80, verbose_name='variety')),
                ('pure_share', models.FloatField(validators=[django.core.validators.MinValueValidator(0.0), django.core.validators.MaxValueValidator(1.0)], verbose_name='pure seed by weight')),
                ('germination_share', models.FloatField(blank=True, null=True, validators=[django.core.validators.MinValueValidator(0.0), django.core.validators.MaxValueValidator(1.0)], verbose_name='germination')),
                ('hard_share', models.FloatField(default=0.0, validators=[django.core.validators.MinValueValidator(0.0), django.core.validators.MaxValueValidator(1.0)], verbose_name='hard or dormant seed')),
                ('origin', models.CharField(blank=True, max_length=80, verbose_name='origin')),
            ],
            options={
                'verbose_name': 'component of a mix',
                'verbose_name_plural': 'components of a mix',
            },
        ),
        migrations.CreateModel(
            name='LotMove',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('client_key', models.UUIDField(default=uuid.uuid4, editable=False, unique=True)),
                ('notes', models.TextField(blank=True, max_length=4000, verbose_name='notes')),
                ('done_by', models.CharField(blank=True, max_length=120, verbose_name='done by')),
                ('written_at', models.DateTimeField(editable=False)),
                ('voided_at', models.DateTimeField(editable=False, null=True)),
                ('void_reason', models.CharField(blank=True, editable=False, max_length=500)),
                ('what', models.CharField(choices=[('received', 'more of it received'), ('brought_back', 'brought back from the field'), ('returned', 'returned to the supplier'), ('passed_on', 'sold or given away'), ('discarded', 'discarded')], max_length=12, verbose_name='what became of it')),
                ('moved_on', models.DateField(verbose_name='on')),
                ('mass_kg', models.FloatField(verbose_name='weight')),
            ],
            options={
                'verbose_name': 'lot coming or going',
                'verbose_name_plural': 'lots coming and going',
                'abstract': False,
            },
        ),
        migrations.CreateModel(
            name='OfferPrice',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('bag_kg', models.FloatField(verbose_name='weight of a bag')),
                ('from_bags', models.PositiveIntegerField(default=1, verbose_name='from so many bags on')),
                ('price', models.FloatField(verbose_name='price of a bag')),
            ],
            options={
                'verbose_name': 'price',
                'verbose_name_plural': 'prices',
            },
        ),
        migrations.CreateModel(
            name='OrderLine',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('variety', models.CharField(blank=True, max_length=80, verbose_name='variety')),
                ('status', models.CharField(choices=[('organic', 'organic'), ('untreated', 'not organic, untreated'), ('treated', 'treated')], default='organic', max_length=9, verbose_name='status')),
                ('bag_kg', models.FloatField(verbose_name='weight of a bag')),
                ('bags', models.PositiveIntegerField(verbose_name='bags')),
                ('price', models.FloatField(blank=True, null=True, verbose_name='price of a bag')),
                ('pls_share', models.FloatField(blank=True, null=True, validators=[django.core.validators.MinValueValidator(0.0), django.core.validators.MaxValueValidator(1.0)], verbose_name='pure live seed offered')),
            ],
            options={
                'verbose_name': 'order line',
                'verbose_name_plural': 'order lines',
            },
        ),
        migrations.CreateModel(
            name='SeedOffer',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('client_key', models.UUIDField(default=uuid.uuid4, editable=False, unique=True)),
                ('notes', models.TextField(blank=True, max_length=4000, verbose_name='notes')),
                ('done_by', models.CharField(blank=True, max_length=120, verbose_name='done by')),
                ('written_at', models.DateTimeField(editable=False)),
                ('voided_at', models.DateTimeField(editable=False, null=True)),
                ('void_reason', models.CharField(blank=True, editable=False, max_length=500)),
                ('variety', models.CharField(blank=True, max_length=80, verbose_name='variety')),
                ('offered_on', models.DateField(verbose_name='day of the price list')),
                ('status', models.CharField(choices=[('organic', 'organic'), ('untreated', 'not organic, untreated'), ('treated', 'treated')], default='organic', max_length=9, verbose_name='status')),
                ('treatment', models.CharField(blank=True, max_length=120, verbose_name='treatment')),
                ('purity_share', models.FloatField(blank=True, null=True, validators=[django.core.validators.MinValueValidator(0.0), django.core.validators.MaxValueValidator(1.0)], verbose_name='purity')),
                ('germination_share', models.FloatField(blank=True, null=True, validators=[django.core.validators.MinValueValidator(0.0), django.core.validators.MaxValueValidator(1.0)], verbose_name='germination')),
                ('hard_share', models.FloatField(default=0.0, validators=[django.core.validators.MinValueValidator(0.0), django.core.validators.MaxValueValidator(1.0)], verbose_name='hard or dormant seed')),
                ('tested_on', models.DateField(blank=True, null=True, verbose_name='test month')),
                ('in_stock_from', models.DateField(blank=True, null=True, verbose_name='in stock from')),
                ('in_stock_until', models.DateField(blank=True, null=True, verbose_name='in stock until')),
                ('stock_kg', models.FloatField(blank=True, null=True, verbose_name='no more in stock than')),
            ],
            options={
                'verbose_name': 'seed offer',
                'verbose_name_plural': 'seed offers',
                'abstract': False,
            },
        ),
        migrations.CreateModel(
            name='SeedOrder',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('client_key', models.UUIDField(default=uuid.uuid4, editable=False, unique=True)),
                ('notes', models.TextField(blank=True, max_length=4000, verbose_name='notes')),
                ('done_by', models.CharField(blank=True, max_length=120, verbose_name='done by')),
                ('written_at', models.DateTimeField(editable=False)),
                ('voided_at', models.DateTimeField(editable=False, null=True)),
                ('void_reason', models.CharField(blank=True, editable=False, max_length=500)),
                ('drawn_up_on', models.DateField(verbose_name='drawn up on')),
                ('wanted_by', models.DateField(blank=True, null=True, verbose_name='wanted by')),
                ('sent_on', models.DateField(blank=True, null=True, verbose_name='sent on')),
                ('reference', models.CharField(blank=True, max_length=60, verbose_name='order number')),
                ('freight', models.FloatField(blank=True, null=True, verbose_name='freight')),
            ],
            options={
                'verbose_name': 'seed order',
                'verbose_name_plural': 'seed orders',
                'abstract': False,
            },
        ),
        migrations.AddField(
            model_name='seedlot',
            name='came',
            field=models.CharField(choices=[('received', 'received'), ('on_hand', 'on hand at the beginning'), ('saved', 'saved from our own crop')], default='received', max_length=8, verbose_name='how it came'),
        ),
        migrations.AddField(
            model_name='seedlot',
            name='inert_share',
            field=models.FloatField(blank=True, null=True, validators=[django.core.validators.MinValueValidator(0.0), django.core.validators.MaxValueValidator(1.0)], verbose_name='inert matter'),
        ),
        migrations.AddField(
            model_name='seedlot',
            name='inoculant',
            field=models.CharField(blank=True, max_length=120, verbose_name='inoculant on the seed'),
        ),
        migrations.AddField(
            model_name='seedlot',
            name='inoculant_until',
            field=models.DateField(blank=True, null=True, verbose_name='inoculant good until the month'),
        ),
        migrations.AddField(
            model_name='seedlot',
            name='noxious',
            field=models.CharField(blank=True, max_length=300, verbose_name='noxious weeds, by number'),
        ),
        migrations.AddField(
            model_name='seedlot',
            name='other_crop_share',
            field=models.FloatField(blank=True, null=True, validators=[django.core.validators.MinValueValidator(0.0), django.core.validators.MaxValueValidator(1.0)], verbose_name='other crop seed'),
        ),
        migrations.AddField(
            model_name='seedlot',
            name='weed_share',
            field=models.FloatField(blank=True, null=True, validators=[django.core.validators.MinValueValidator(0.0), django.core.validators.MaxValueValidator(1.0)], verbose_name='weed seed'),
        ),
        migrations.AddField(
            model_name='supplier',
            name='freight',
            field=models.FloatField(blank=True, null=True, verbose_name='freight for an order'),
        ),
        migrations.AddField(
            model_name='supplier',
            name='freight_by_weight',
            field=models.FloatField(blank=True, null=True, verbose_name='freight by weight'),
        ),
        migrations.AddField(
            model_name='supplier',
            name='least_order',
            field=models.FloatField(blank=True, null=True, verbose_name='least order, money'),
        ),
        migrations.AddConstraint(
            model_name='supplier',
            constraint=models.CheckConstraint(condition=models.Q(models.Q(('freight', None), ('freight__gte', 0), _connector='OR'), models.Q(('freight_by_weight', None), ('freight_by_weight__gte', 0), _connector='OR'), models.Q(('least_order', None), ('least_order__gte', 0), _connector='OR')), name='supplier_terms_not_below_zero', violation_error_message='Money is nothing or more.'),
        ),
        migrations.AddField(
            model_name='calibration',
            name='equipment',
            field=models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='calibrations', to='records.equipment', verbose_name='machine'),
        ),
        migrations.AddField(
            model_name='calibration',
            name='farm',
            field=models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='%(class)ss', to='farm.farm'),
        ),
        migrations.AddField(
            model_name='calibration',
            name='kind',
            field=models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='calibrations', to='records.kind', verbose_name='kind of seed'),
        ),
        migrations.AddField(
            model_name='calibration',
            name='voided_by',
            field=models.ForeignKey(editable=False, null=True, on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL),
        ),
        migrations.AddField(
            model_name='calibration',
            name='written_by',
            field=models.ForeignKey(editable=False, on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL),
        ),
        migrations.AddField(
            model_name='lotcomponent',
            name='kind',
            field=models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='components', to='records.kind', verbose_name='kind'),
        ),
        migrations.AddField(
            model_name='lotcomponent',
            name='lot',
            field=models.ForeignKey(on_delete=django.db.models.deletion.CASCADE, related_name='components', to='records.seedlot'),
        ),
        migrations.AddField(
            model_name='lotmove',
            name='farm',
            field=models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='%(class)ss', to='farm.farm'),
        ),
        migrations.AddField(
            model_name='lotmove',
            name='lot',
            field=models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='moves', to='records.seedlot', verbose_name='seed lot'),
        ),
        migrations.AddField(
            model_name='lotmove',
            name='voided_by',
            field=models.ForeignKey(editable=False, null=True, on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL),
        ),
        migrations.AddField(
            model_name='lotmove',
            name='written_by',
            field=models.ForeignKey(editable=False, on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL),
        ),
        migrations.AddField(
            model_name='orderline',
            name='kind',
            field=models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='order_lines', to='records.kind', verbose_name='kind'),
        ),
        migrations.AddField(
            model_name='seedoffer',
            name='farm',
            field=models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='%(class)ss', to='farm.farm'),
        ),
        migrations.AddField(
            model_name='seedoffer',
            name='kind',
            field=models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='offers', to='records.kind', verbose_name='kind'),
        ),
        migrations.AddField(
            model_name='seedoffer',
            name='supplier',
            field=models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='offers', to='records.supplier', verbose_name='supplier'),
        ),
        migrations.AddField(
            model_name='seedoffer',
            name='voided_by',
            field=models.ForeignKey(editable=False, null=True, on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL),
        ),
        migrations.AddField(
            model_name='seedoffer',
            name='written_by',
            field=models.ForeignKey(editable=False, on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL),
        ),
        migrations.AddField(
            model_name='offerprice',
            name='offer',
            field=models.ForeignKey(on_delete=django.db.models.deletion.CASCADE, related_name='prices', to='records.seedoffer'),
        ),
        migrations.AddField(
            model_name='seedorder',
            name='farm',
            field=models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='%(class)ss', to='farm.farm'),
        ),
        migrations.AddField(
            model_name='seedorder',
            name='supplier',
            field=models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='orders', to='records.supplier', verbose_name='supplier'),
        ),
        migrations.AddField(
            model_name='seedorder',
            name='voided_by',
            field=models.ForeignKey(editable=False, null=True, on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL),
        ),
        migrations.AddField(
            model_name='seedorder',
            name='written_by',
            field=models.ForeignKey(editable=False, on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL),
        ),
        migrations.AddField(
            model_name='orderline',
            name='order',
            field=models.ForeignKey(on_delete=django.db.models.deletion.CASCADE, related_name='lines', to='records.seedorder'),
        ),
        migrations.AddField(
            model_name='seedlot',
            name='order',
            field=models.ForeignKey(blank=True, null=True, on_delete=django.db.models.deletion.PROTECT, related_name='lots', to='records.seedorder', verbose_name='from the order'),
        ),
        migrations.AddConstraint(
            model_name='calibration',
            constraint=models.CheckConstraint(condition=models.Q(models.Q(('void_reason', ''), ('voided_at', None), ('voided_by', None)), models.Q(('voided_at__isnull', False), ('voided_by__isnull', False), models.Q(('void_reason', ''), _negated=True)), _connector='OR'), name='calibration_void_is_whole'),
        ),
        migrations.AddConstraint(
            model_name='calibration',
            constraint=models.CheckConstraint(condition=models.Q(('caught_kg__gt', 0)), name='calibration_caught_something', violation_error_message='A weight is more than nothing.'),
        ),
        migrations.AddConstraint(
            model_name='calibration',
            constraint=models.CheckConstraint(condition=models.Q(models.Q(('area_m2', None), ('distance_m__gt', 0), ('row_width_m__gt', 0), ('rows__gte', 1)), models.Q(('area_m2__gt', 0), ('distance_m', None)), _connector='OR'), name='calibration_is_over_known_ground', violation_error_message='Give a distance with rows and their spacing, or an area.'),
        ),
        migrations.AddConstraint(
            model_name='calibration',
            constraint=models.CheckConstraint(condition=models.Q(('wanted_kg_m2', None), ('wanted_kg_m2__gt', 0), _connector='OR'), name='calibration_rate_above_zero'),
        ),
        migrations.AddConstraint(
            model_name='lotcomponent',
            constraint=models.CheckConstraint(condition=models.Q(('pure_share__gt', 0), ('pure_share__lte', 1)), name='component_purity_is_a_share'),
        ),
        migrations.AddConstraint(
            model_name='lotcomponent',
            constraint=models.CheckConstraint(condition=models.Q(('germination_share', None), models.Q(('germination_share__gte', 0), ('germination_share__lte', django.db.models.expressions.CombinedExpression(models.Value(1), '-', models.F('hard_share')))), _connector='OR'), name='component_viable_is_a_share'),
        ),
        migrations.AddConstraint(
            model_name='lotcomponent',
            constraint=models.UniqueConstraint(models.F('lot'), models.F('kind'), models.F('variety'), name='component_once_a_lot'),
        ),
        migrations.AddConstraint(
            model_name='lotmove',
            constraint=models.CheckConstraint(condition=models.Q(models.Q(('void_reason', ''), ('voided_at', None), ('voided_by', None)), models.Q(('voided_at__isnull', False), ('voided_by__isnull', False), models.Q(('void_reason', ''), _negated=True)), _connector='OR'), name='lotmove_void_is_whole'),
        ),
        migrations.AddConstraint(
            model_name='lotmove',
            constraint=models.CheckConstraint(condition=models.Q(('mass_kg__gt', 0)), name='move_weighs_something', violation_error_message='A weight is more than nothing.'),
        ),
        migrations.AddConstraint(
            model_name='seedoffer',
            constraint=models.CheckConstraint(condition=models.Q(models.Q(('void_reason', ''), ('voided_at', None), ('voided_by', None)), models.Q(('voided_at__isnull', False), ('voided_by__isnull', False), models.Q(('void_reason', ''), _negated=True)), _connector='OR'), name='seedoffer_void_is_whole'),
        ),
        migrations.AddConstraint(
            model_name='seedoffer',
            constraint=models.CheckConstraint(condition=models.Q(('purity_share', None), models.Q(('purity_share__gt', 0), ('purity_share__lte', 1)), _connector='OR'), name='offer_purity_is_a_share', violation_error_message='Purity lies above 0 and up to 100 %%.'),
        ),
        migrations.AddConstraint(
            model_name='seedoffer',
            constraint=models.CheckConstraint(condition=models.Q(('germination_share', None), models.Q(('germination_share__gte', 0), ('germination_share__lte', django.db.models.expressions.CombinedExpression(models.Value(1), '-', models.F('hard_share')))), _connector='OR'), name='offer_viable_is_a_share', violation_error_message='Germination and hard seed together pass 100 %%.'),
        ),
        migrations.AddConstraint(
            model_name='seedoffer',
            constraint=models.CheckConstraint(condition=models.Q(('stock_kg', None), ('stock_kg__gt', 0), _connector='OR'), name='offer_stock_above_zero', violation_error_message='A stock is more than nothing.'),
        ),
        migrations.AddConstraint(
            model_name='seedoffer',
            constraint=models.CheckConstraint(condition=models.Q(('in_stock_from', None), ('in_stock_until', None), ('in_stock_until__gte', models.F('in_stock_from')), _connector='OR'), name='offer_ends_after_it_begins', violation_error_message='The last day in stock is before the first.'),
        ),
        migrations.AddConstraint(
            model_name='offerprice',
            constraint=models.CheckConstraint(condition=models.Q(('bag_kg__gt', 0), ('from_bags__gte', 1), ('price__gte', 0)), name='price_is_of_a_bag', violation_error_message='A bag has a weight, and a price of nothing or more.'),
        ),
        migrations.AddConstraint(
            model_name='offerprice',
            constraint=models.UniqueConstraint(models.F('offer'), models.F('bag_kg'), models.F('from_bags'), name='price_once_a_break'),
        ),
        migrations.AddConstraint(
            model_name='seedorder',
            constraint=models.CheckConstraint(condition=models.Q(models.Q(('void_reason', ''), ('voided_at', None), ('voided_by', None)), models.Q(('voided_at__isnull', False), ('voided_by__isnull', False), models.Q(('void_reason', ''), _negated=True)), _connector='OR'), name='seedorder_void_is_whole'),
        ),
        migrations.AddConstraint(
            model_name='seedorder',
            constraint=models.CheckConstraint(condition=models.Q(('freight', None), ('freight__gte', 0), _connector='OR'), name='order_freight_not_below_zero', violation_error_message='Freight is nothing or more.'),
        ),
        migrations.AddConstraint(
            model_name='seedorder',
            constraint=models.CheckConstraint(condition=models.Q(('sent_on', None), ('sent_on__gte', models.F('drawn_up_on')), _connector='OR'), name='order_sent_after_drawn_up', violation_error_message='It was sent before it was drawn up.'),
        ),
        migrations.AddConstraint(
            model_name='orderline',
            constraint=models.CheckConstraint(condition=models.Q(('bag_kg__gt', 0), ('bags__gte', 1)), name='line_is_of_whole_bags'),
        ),
        migrations.AddConstraint(
            model_name='orderline',
            constraint=models.CheckConstraint(condition=models.Q(('price', None), ('price__gte', 0), _connector='OR'), name='line_price_not_below_zero'),
        ),
        migrations.AddConstraint(
            model_name='orderline',
            constraint=models.CheckConstraint(condition=models.Q(('pls_share', None), models.Q(('pls_share__gt', 0), ('pls_share__lte', 1)), _connector='OR'), name='line_live_seed_is_a_share'),
        ),
        GuardRecords(
            [
                "calibration",
                "lotmove",
                "seedlot",
                "seedoffer",
                "seedorder",
                "supplier",
            ]
        ),
    ]
