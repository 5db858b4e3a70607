"""What a field carries in a year: a cash crop, a short cover, a winter cover."""

import datetime as dt
from collections import defaultdict

from farm.models import Field
from records.models import (
    Application,
    BiomassSample,
    InputProduct,
    Kind,
    Observation,
    Planting,
    SampleFrame,
    SeedLine,
    SeedLot,
    Termination,
)

CASH = ("lettuce", "snap-bean", "spinach", "garden-pea", "radish", "beet", "kale")
SHORT = (
    ("buckwheat",),
    ("buckwheat",),
    ("buckwheat", "cowpea"),
    ("sorghum-sudangrass",),
    ("white-mustard",),
    ("buckwheat", "phacelia", "sunn-hemp"),
)
WINTER = (("oats", "field-pea"), ("cereal-rye", "hairy-vetch"), ("cereal-rye",))
KINDS = sorted({*CASH, *(kind for mix in (*SHORT, *WINTER) for kind in mix)})
LOTS_A_YEAR = 3
SEED_KG_M2 = 0.007
DAY = dt.timedelta(days=1)


class Grower:
    """Rows of one farm, each list after those that it leans on."""

    def __init__(self, farm, owner, dice, *, today):
        self.farm, self.owner, self.dice, self.today = farm, owner, dice, today
        self.kinds = {kind.slug: kind for kind in Kind.objects.filter(slug__in=KINDS)}
        self.rows = defaultdict(list)
        arrived = dt.date(today.year - 30, 1, 1)
        self.compost, self.manure = (
            self.write(InputProduct, arrived, name=name, type=type_)
            for name, type_ in (("Leaf compost", "compost"), ("Barn manure", "manure"))
        )

    def write(self, model, day, **facts):
        """A record of that day, written down the same evening or too late."""
        late = 10 * DAY if self.dice.random() < 0.03 else dt.timedelta()
        at = dt.datetime.combine(day + late, dt.time(20), tzinfo=dt.UTC)
        row = model(farm=self.farm, written_by=self.owner, written_at=at, **facts)
        self.rows[model].append(row)
        return row

    def days(self, least, most):
        return self.dice.randint(least, most) * DAY

    def land(self, day, count, area_m2):
        return [
            self.write(
                Field,
                day,
                name=f"{self.farm.name} {n:04}",
                area_m2=area_m2 * (0.2 + n % 7),
                measured="entered",
            )
            for n in range(count)
        ]

    def season(self, land, year):
        self.seed = {kind: self._lots(kind, year) for kind in KINDS}
        for place, field in enumerate(land):
            self._inputs(field, year)
            harvested = self._cash(field, year, place)
            self._short(field, harvested + self.days(2, 12), place + year)
            if place % 10:
                sown = dt.date(year, 8, 28) + self.days(0, 25)
                self._winter(field, sown, place + year)

    def _lots(self, slug, year):
        return [
            self.write(
                SeedLot,
                dt.date(year, 3, 1),
                kind=self.kinds[slug],
                lot_number=f"{slug[:2]}-{year}-{n}".upper(),
                supplier="Ridge Seed",
                received_on=dt.date(year, 3, 1),
                received_kg=100_000.0,
                purity_share=0.98,
                germination_share=0.8 + 0.05 * n,
            )
            for n in range(LOTS_A_YEAR)
        ]

    def _inputs(self, field, year):
        for product, chance in ((self.compost, 1.0), (self.manure, 0.3)):
            if self.dice.random() > chance:
                continue
            on = dt.date(year, 3, 20) + self.days(0, 15)
            self.write(
                Application,
                on,
                product=product,
                field=field,
                area_m2=field.area_m2,
                measure="mass",
                amount_si=0.5 * field.area_m2,
                applied_on=on,
                worked_in_on=on + DAY,
            )

    def _cash(self, field, year, place):
        sown = dt.date(year, 4, 10) + self.days(0, 18)
        mix = (CASH[(place + year) % len(CASH)],)
        stand = self._sow(field, mix, sown, purpose="cash", method="drilled")
        over = sown + self.days(60, 75)
        residue = self.dice.choice(("removed", "worked_in"))
        self._see(stand, sown + self.days(6, 12), "emerged")
        self._end(stand, over, "harvested", residue)
        return over

    def _short(self, field, sown, place):
        stand = self._sow(field, SHORT[place % len(SHORT)], sown, next_crop="broccoli")
        over = sown + self.days(32, 48)
        self._see(stand, sown + self.days(4, 7), "emerged")
        share = self.dice.uniform(0.6, 1.0)
        self._see(stand, sown + self.days(18, 26), "canopy", canopy_share=share)
        share = self.dice.uniform(0.1, 0.6)
        self._see(stand, sown + self.days(29, 31), "bloom", bloom_share=share)
        weeds = self.dice.randint(0, 5)
        self._see(stand, sown + self.days(27, 31), "weeds", weeds=weeds)
        if place % 3 == 0:
            self._weigh(stand, over - DAY)
        self._end_in_parts(stand, over)

    def _winter(self, field, sown, place):
        mix = WINTER[place % len(WINTER)]
        stand = self._sow(field, mix, sown, method="drilled")
        spring = dt.date(sown.year + 1, 3, 28)
        self._see(stand, sown + self.days(6, 11), "emerged")
        if "oats" in mix:
            killed = dt.date(sown.year, 11, 15) + self.days(0, 20)
            self._see(stand, killed, "frost_killed")
            self._end(stand, spring + self.days(0, 8), "tilled_in", "worked_in")
        else:
            self._end(stand, spring + self.days(0, 8), "roller_crimped", "on_top")

    def _sow(self, field, mix, sown, *, purpose="cover", **more):
        part = 0.5 if self.dice.random() < 0.15 else 1.0
        stand = self.write(
            Planting,
            sown,
            field=field,
            area_m2=field.area_m2 * part,
            purpose=purpose,
            sown_on=sown,
            planned_on=sown - self.days(0, 5),
            **more,
        )
        for slug in mix:
            kg = stand.area_m2 * SEED_KG_M2 * self.dice.uniform(0.7, 1.4) / len(mix)
            lot = self.dice.choice(self.seed[slug])
            line = SeedLine(
                planting=stand,
                kind=self.kinds[slug],
                lot=lot,
                seed_kg=kg,
                share=1 / len(mix),
            )
            self.rows[SeedLine].append(line)
        return stand

    def _see(self, stand, on, seen, **facts):
        if on <= self.today:
            self.write(Observation, on, planting=stand, seen_on=on, seen=seen, **facts)

    def _weigh(self, stand, on):
        dry_share = self.dice.uniform(0.12, 0.2)
        sample = self.write(
            BiomassSample, on, planting=stand, cut_on=on, dry_share=dry_share
        )
        for _ in range(3):
            wet_kg = self.dice.uniform(0.4, 0.9)
            frame = SampleFrame(sample=sample, area_m2=0.25, wet_kg=wet_kg)
            self.rows[SampleFrame].append(frame)

    def _end_in_parts(self, stand, on):
        if self.dice.random() < 0.7:
            self._end(
                stand, on, "flail_mown", self.dice.choice(("on_top", "worked_in"))
            )
            return
        self._end(stand, on, "mown", "on_top", part=0.5)
        self._end(stand, on + self.days(1, 6), "tilled_in", "worked_in", part=0.5)

    def _end(self, stand, on, method, residue, *, part=1.0):
        if on > self.today:
            return
        self.write(
            Termination,
            on,
            planting=stand,
            area_m2=stand.area_m2 * part,
            ended_on=on,
            method=method,
            residue=residue,
            worked_in_on=on + self.days(0, 2) if residue == "worked_in" else None,
            reason="Weeds first.",
        )
