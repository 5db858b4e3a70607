"""Mixes by their components, treated seed by its approval, and what is overruled."""

import datetime as dt
import html
import io
import re

import pytest
from django.urls import reverse
from django.utils import timezone
from pypdf import PdfReader

from records.models import (
    LotComponent,
    OfferComponent,
    SeedLine,
    SeedLot,
    SeedOrder,
)
from reports.calc.shapes.basics import Span
from reports.ledger.season import season_ledger
from tests.factories import (
    InputProductFactory,
    KindFactory,
    SeedLotFactory,
    SeedSearchFactory,
    SourceAskedFactory,
)
from tests.records.typed import rows
from tests.reports.seed.sowings import BAG, offer, page, plan, posted

pytestmark = pytest.mark.django_db


@pytest.fixture
def pea(world):
    return world.ours.kind


@pytest.fixture
def mixed(world, oats, pea, today):
    """Oats and a second kind, planned together on the ground where oats stood alone."""
    SeedLine.objects.filter(planting__sown_on=None).update(share=0.5, seed_kg=40.0)
    (line,) = SeedLine.objects.filter(planting__sown_on=None, kind=oats)
    return SeedLine.objects.create(
        planting=line.planting, kind=pea, share=0.5, seed_kg=60.0
    )


def blend(parts, made, link):
    for kind, pure, live in parts:
        made.objects.create(
            **link, kind=kind, pure_share=pure, germination_share=live, hard_share=0.0
        )


def test_a_mix_on_hand_covers_each_of_its_kinds(world, owner_client, oats, pea, mixed):
    told = {"farm": world.farm, "written_by": world.owner, "kind": oats}
    lot = SeedLotFactory(
        **told, lot_number="MIX", received_kg=100.0, tested_on=timezone.localdate()
    )
    blend([(oats, 0.4, 0.9), (pea, 0.55, 0.8)], LotComponent, {"lot": lot})
    answer = page(world, owner_client, "seed-order").content.decode()
    stock = answer[answer.index("From stock and") : answer.index("To buy")]
    assert stock.count("Oats + Buckwheat, MIX") == 2
    year = timezone.localdate().year
    book = page(world, owner_client, "seed-balance", lot.received_on.year)
    text = re.sub(r"\s+", " ", html.unescape(book.content.decode()))
    assert "Lots of Oats + Buckwheat" in text
    # 100 kg at 40 % × 90 % is 36 kg of live oats, which is 79.4 lb.
    assert "Of it 79.4 lb in 220 lb of the mix MIX." in text
    assert year >= lot.received_on.year


def test_a_mix_sown_counts_each_kind_by_the_tag_however_it_is_parted(
    world, oats, pea, today
):
    lot = SeedLotFactory(farm=world.farm, written_by=world.owner, kind=oats)
    blend([(oats, 0.4, 0.9), (pea, 0.55, 0.8)], LotComponent, {"lot": lot})
    planting = plan(world, oats, today)
    planting.lines.all().delete()
    planting.sown_on = today
    planting.save()
    for kind, kg in ((oats, 30.0), (pea, 70.0)):
        SeedLine.objects.create(
            planting=planting, kind=kind, lot=lot, seed_kg=kg, share=0.5
        )
    fields = season_ledger(world.farm, Span(today, today)).fields
    (sown,) = [p for f in fields for p in f.plantings if p.id == planting.pk]
    live = [line.seed_kg * line.lot.pls for line in sown.lines]
    assert live == pytest.approx([100 * 0.4 * 0.9, 100 * 0.55 * 0.8])


def test_an_offer_of_a_mix_is_bought_for_who_wants_all_of_it(
    world, owner_client, oats, pea, mixed
):
    told = offer(world, oats, price=20.0)
    blend([(oats, 0.4, 0.9), (pea, 0.55, 0.9)], OfferComponent, {"offer": told})
    answer = page(world, owner_client, "seed-order").content.decode()
    lines = posted(answer)
    assert lines["lines-0-variety"] == "mix"
    url = reverse("records:new", args=[world.farm.slug, "seed-orders"])
    assert owner_client.post(url, lines).status_code == 302
    line = SeedOrder.objects.latest("pk").lines.get()
    # A mix has a live seed for each kind: 40 % at 90 %, and 55 % at 90 %.
    assert line.pls_share is None
    assert line.bag_kg == pytest.approx(BAG)
    kept = line.order.components.values_list("line", "kind", "pls_share")
    assert list(kept.order_by("pk")) == [
        (1, oats.pk, pytest.approx(0.36)),
        (1, pea.pk, pytest.approx(0.495)),
    ]


def test_a_mix_on_order_is_counted_on_kind_by_kind_and_not_bought_again(
    world, owner_client, oats, pea, mixed
):
    told = offer(world, oats, price=20.0)
    blend([(oats, 0.4, 0.9), (pea, 0.55, 0.9)], OfferComponent, {"offer": told})
    url = reverse("records:new", args=[world.farm.slug, "seed-orders"])
    first = posted(page(world, owner_client, "seed-order").content.decode())
    assert owner_client.post(url, first).status_code == 302
    answer = page(world, owner_client, "seed-order").content.decode()
    assert posted(answer) == {}
    stock = answer[answer.index("From stock and") : answer.index("To buy")]
    assert stock.count("Oats + Buckwheat") == 2
    assert stock.count("ordered, not yet come") >= 2
    # Without word of how alive each kind is, nothing of it can be counted on.
    SeedOrder.objects.latest("pk").components.update(pls_share=None)
    answer = page(world, owner_client, "seed-order").content.decode()
    assert "Ordered, but not counted on here" in answer


def test_a_mix_that_is_not_organic_is_sent_for_after_a_search_for_each_kind(
    world, owner_client, oats, pea, mixed, today
):
    told = offer(world, oats, price=20.0, status="untreated")
    blend([(oats, 0.4, 0.9), (pea, 0.55, 0.9)], OfferComponent, {"offer": told})
    url = reverse("records:new", args=[world.farm.slug, "seed-orders"])
    proposed = posted(page(world, owner_client, "seed-order").content.decode())
    sent = proposed | {"sent_on": today.isoformat()}
    searched(world, oats, today)
    refused = owner_client.post(url, sent).content.decode()
    assert f"Not yet searched for: {pea}." in refused
    answer = page(world, owner_client, "seed-order").content.decode()
    assert "search for organic seed not complete" in answer
    searched(world, pea, today)
    assert owner_client.post(url, sent).status_code == 302
    order = SeedOrder.objects.latest("pk")
    answer = page(world, owner_client, "order", order.pk).content.decode()
    assert f"{oats}: search complete" in answer
    assert f"{pea}: search complete" in answer


def searched(world, kind, today):
    found = SeedSearchFactory(
        farm=world.farm, written_by=world.owner, kind=kind, searched_on=today
    )
    for name in ("A", "B", "C"):
        SourceAskedFactory(search=found, source=name, asked_on=today)


@pytest.mark.parametrize(
    ("boxes", "sentence"),
    [
        ({"components-0-line": "2"}, "Nothing is ordered in that line."),
        ({"components-1-kind": "oats"}, "A kind stands twice in the mix."),
        ({"lines-0-kind": "other"}, "This kind is none of the mix’s components."),
        ({"components-1-pls_share": "80"}, "would weigh more than the mix"),
        ({"components-1-pls_share": "0"}, "nothing of it would come up"),
        ({"components-1-line": ""}, "Say of which line it is, and which kind."),
    ],
)
def test_a_mix_that_does_not_add_up_is_refused_beside_its_box(
    world, owner_client, oats, pea, mixed, boxes, sentence
):
    told = offer(world, oats, price=20.0)
    blend([(oats, 0.4, 0.9), (pea, 0.55, 0.9)], OfferComponent, {"offer": told})
    proposed = posted(page(world, owner_client, "seed-order").content.decode())
    names = {"oats": str(oats.pk), "other": str(KindFactory(farm=world.farm).pk)}
    wrong = {box: names.get(value, value) for box, value in boxes.items()}
    before = SeedOrder.objects.count()
    url = reverse("records:new", args=[world.farm.slug, "seed-orders"])
    answer = owner_client.post(url, proposed | wrong)
    assert answer.status_code == 200
    assert sentence in html.unescape(answer.content.decode())
    assert SeedOrder.objects.count() == before


def test_treated_seed_is_left_out_until_what_is_on_it_is_approved(
    world, owner_client, oats
):
    world.farm.standard = "us"
    world.farm.save()
    offer(world, oats, status="treated", treatment="Clay coat")
    answer = page(world, owner_client, "seed-order").content.decode()
    assert "treated with Clay coat; no input of the farm" in answer
    assert posted(answer) == {}
    product = {"farm": world.farm, "written_by": world.owner, "name": "Clay coat"}
    InputProductFactory(**product, approval="Our certifier, letter of May")
    answer = page(world, owner_client, "seed-order").content.decode()
    assert "treated with Clay coat; no input" not in answer
    assert posted(answer)["lines-0-status"] == "treated"
    assert "search for organic seed not complete" in answer


def test_what_is_overruled_and_why_is_kept_with_the_order(world, owner_client, oats):
    dear = offer(world, oats, price=60.0)
    offer(world, oats, status="untreated", price=20.0)
    SeedSearchFactory(farm=world.farm, written_by=world.owner, kind=oats)
    url = reverse("reports:seed-order", args=[world.farm.slug])
    plain = owner_client.get(url).content.decode()
    assert posted(plain)["supplier"] == str(dear.supplier_id)
    assert posted(plain)["overruled"] == ""
    asked = {"let_go": "organic_first", "why": "None left in spring"}
    answer = owner_client.get(url, asked).content.decode()
    assert "overruled" in answer
    assert "less than the order by every rule" in answer
    sent = posted(answer)
    new = reverse("records:new", args=[world.farm.slug, "seed-orders"])
    assert owner_client.post(new, sent).status_code == 302
    kept = SeedOrder.objects.latest("pk").overruled
    assert kept.startswith("organic seed first. 200.00 USD below")
    assert kept.endswith("None left in spring")


def test_a_mix_is_ordered_comes_short_and_over_is_sown_and_its_balance_closes(
    world, owner_client, oats, pea, mixed, today
):
    """A pair of kinds in a mix, at 50 lb a bag: 36 % live oats and 50 % live pea."""
    parts = [(oats, 0.4, 0.9), (pea, 0.55, 0.9)]
    told = offer(world, oats, price=20.0, variety="Spring mix")
    blend(parts, OfferComponent, {"offer": told})
    new = reverse("records:new", args=[world.farm.slug, "seed-orders"])
    proposed = posted(page(world, owner_client, "seed-order").content.decode())
    assert owner_client.post(new, proposed).status_code == 302
    order = SeedOrder.objects.latest("pk")
    assert order.lines.get().variety == "Spring mix"
    ordered = order.lines.get().seed_kg

    guess = {"order": order.pk, "line": 0}
    boxes = owner_client.get(url_of_lots(world), guess).context["form"].rows
    assert [row.initial.get("kind") for row in boxes][:2] == [oats.pk, pea.pk]

    def comes(number, kg, weaker=0.0):
        tag = [
            {"kind": k.pk, "pure_share": p * 100, "germination_share": g * 100}
            for k, p, g in parts
        ]
        tag[1]["germination_share"] -= weaker
        lot = {
            "kind": oats.pk,
            "order": order.pk,
            "variety": "mix",
            "lot_number": number,
            "received_on": today.isoformat(),
            "received_kg": f"{kg} kg",
            "inert_share": "5",
            "tested_on": today.isoformat(),
            "status": "organic",
            "certificate": "Plains 0117",
            **rows("components", *tag),
        }
        assert owner_client.post(url_of_lots(world), lot).status_code == 302
        return page(world, owner_client, "order", order.pk).content.decode()

    assert "less came than was ordered" in comes("MIX-1", ordered - 5)
    told = comes("MIX-2", 8, weaker=10)
    assert "more came than was ordered" in told
    # The pea of the second lot: 55 % × 80 % by its tag, 55 % × 90 % offered.
    tags = re.sub(r"\s+", " ", told[told.index("The tag against the offer") :])
    tags = html.unescape(re.sub("<[^>]+>", " ", tags))
    assert re.search(rf"MIX-2 , {pea} +49\.5 % +44\.0 % +the tag shows less", tags)
    assert tags.count(" as offered") == 3
    days = {"last": (today + dt.timedelta(90)).isoformat()}
    url = reverse("reports:sowing-sheet", args=[world.farm.slug])
    sheet = owner_client.get(url, days).content.decode()
    assert "MIX-1" in sheet
    labels = report_on(world, owner_client, "labels-pdf", days)
    # The dressing of the second kind goes onto the mix, and its label says so.
    assert re.search(rf"Oats \+ {pea}.*MIX-1.*Product \d+ 4 oz/50 lb: {pea}", labels)
    planting = mixed.planting
    edit = reverse("records:edit", args=[world.farm.slug, "plantings", planting.pk])
    boxes = sheet[sheet.index(f'action="{edit}"') :]
    sown = posted(boxes[: boxes.index("</form>")])
    assert owner_client.post(edit, sown).status_code == 302
    planting.refresh_from_db()
    assert planting.sown_on == today
    lots = SeedLot.objects.with_balance().filter(order=order)
    left = sum(lot.left_kg for lot in lots)
    used = sum(line.seed_kg for line in planting.lines.all())
    assert used > 0
    assert left == pytest.approx(ordered + 3 - used)
    book = page(world, owner_client, "seed-balance", today.year).content.decode()
    for lot in lots:
        row = book[book.index(f">{lot.lot_number}<") :]
        cells = re.findall(r"(-?[\d.,]+)\xa0(lb|oz)", row[: row.index("</tr>")])
        lb = [float(n.replace(",", "")) / (16 if u == "oz" else 1) for n, u in cells]
        before, came, out, lost, at_end = (*lb[:4], lb[-1])
        assert before + came - out - lost == pytest.approx(at_end, abs=1.0)


def url_of_lots(world):
    return reverse("records:new", args=[world.farm.slug, "seed-lots"])


def report_on(world, client, name, asked):
    """The text of a paper in print."""
    url = reverse(f"reports:{name}", args=[world.farm.slug])
    paper = PdfReader(io.BytesIO(client.get(url, asked).content))
    return re.sub(r"\s+", " ", " ".join(one.extract_text() for one in paper.pages))
