"""What a person types into each form, sound enough to be written down."""

from tests.factories import PlantingFactory


def rows(prefix, *told):
    """Rows under a form, as a browser sends them."""
    sent = {f"{prefix}-TOTAL_FORMS": len(told), f"{prefix}-INITIAL_FORMS": 0}
    for place, row in enumerate(told):
        sent |= {f"{prefix}-{place}-{name}": value for name, value in row.items()}
    return sent


def typed(noun, at, **over):
    """The boxes of a new record on a farm; whatever stands in ``over`` wins."""
    return {**SAID[noun](at), **over}


def standing(at):
    """A planting nobody has ended yet."""
    return PlantingFactory(
        farm=at.farm,
        written_by=at["fields"].written_by,
        field=at["fields"],
        line__kind=at.kind,
    )


SAID = {
    "fields": lambda at: {
        "name": "South",
        "kind": "field",
        "area": "1.5 ac",
        "status": "organic",
        "notes": "Stony at the gate.",
    },
    "land-statements": lambda at: {
        "field": at["fields"].pk,
        "first": "2021-01-01",
        "last": "2023-12-31",
        "signer": "The former tenant",
        "signed_on": "2026-02-01",
    },
    "seed-dressings": lambda at: {
        "kind": at.kind.pk,
        "product": at["input-products"].pk,
        "dose_share": "5 oz/50 lb",
        "good_until": "2027-12-01",
        "packet_kg": "8 oz",
        "packet_price": "9",
    },
    "seed-lots": lambda at: {
        "kind": at.kind.pk,
        "lot_number": "BW-27",
        "received_on": "2026-04-02",
        "received_kg": "50 lb",
        "purity_share": "98",
        "germination_share": "85",
        "status": "organic",
        **rows(
            "components",
            {"kind": at.kind.pk, "pure_share": "98", "germination_share": "85"},
        ),
    },
    "plantings": lambda at: {
        "field": at["fields"].pk,
        "area_m2": "0.5 ac",
        "purpose": "cover",
        "method": "broadcast",
        "sown_on": "2026-08-01",
        **rows(
            "lines", {"kind": at.kind.pk, "lot": at["seed-lots"].pk, "seed_kg": "30 lb"}
        ),
    },
    "observations": lambda at: {
        "planting": at["plantings"].pk,
        "seen_on": "2026-07-08",
        "seen": "bloom",
        "bloom_share": "40",
    },
    "duties": lambda at: {
        "what": "look",
        "field": at["fields"].pk,
        "planting": at["plantings"].pk,
        "earliest_on": "2026-06-20",
        "latest_on": "2026-06-27",
    },
    "biomass-samples": lambda at: {
        "planting": at["plantings"].pk,
        "cut_on": "2026-07-10",
        "dry_share": "15",
        **rows("frames", {"area_m2": "0.25 sq m", "wet_kg": "1.2 kg"}),
    },
    "terminations": lambda at: {
        "planting": standing(at).pk,
        "ended_on": "2026-07-15",
        "method": "flail_mown",
        "outcome": "ended",
        "residue": "on_top",
    },
    "input-products": lambda at: {"name": "Rock phosphate", "type": "lime"},
    "applications": lambda at: {
        "product": at["input-products"].pk,
        "field": at["fields"].pk,
        "amount": "400 lb",
        "applied_on": "2026-05-10",
    },
    "stations": lambda at: {"name": "Creek", "is_main": "on"},
    "own-figures": lambda at: {"low": "1", "high": "2", "reason": "Weighed here"},
    "edges": lambda at: {
        "field": at["fields"].pk,
        "side": "along the creek",
        "neighbour": "Woods",
        "buffer_m": "30 ft",
    },
    "seed-searches": lambda at: {
        "kind": at.kind.pk,
        "traits": "Untreated, early",
        "wanted_kg": "100 lb",
        "searched_on": "2026-02-10",
        "reason": "quantity",
        "lot": at["seed-lots"].pk,
        **rows(
            "asked",
            {"source": "A seed house", "asked_on": "2026-02-08", "answer": "Sold out"},
        ),
    },
    "compost-batches": lambda at: {
        "name": "Spring 2",
        "feedstocks": "Leaves and grass",
        "method": "windrow",
        "started_on": "2026-04-10",
        **rows("days", {"day": "2026-04-14", "temp_c": "140 F", "turned": "on"}),
    },
    "grazings": lambda at: {
        "field": at["fields"].pk,
        "planting": at["plantings"].pk,
        "animals": "Ewes",
        "head": "12",
        "in_on": "2026-08-20",
        "out_on": "2026-08-25",
    },
    "irrigations": lambda at: {
        "field": at["fields"].pk,
        "watered_on": "2026-06-12",
        "water_mm": "0.5 in",
    },
    "mulch-films-and-tarps": lambda at: {
        "field": at["fields"].pk,
        "planting": at["plantings"].pk,
        "area_m2": "0.4 ac",
        "material": "polyethylene",
        "laid_on": "2026-06-02",
        "taken_off_on": "2026-09-28",
        "went": "collected",
    },
    "soil-tests": lambda at: {
        "field": at["fields"].pk,
        "sampled_on": "2026-04-21",
        "laboratory": "The state laboratory",
        "depth_m": "6 in",
        **rows("readings", {"name": "Phosphorus", "value": "31", "unit": "ppm"}),
    },
    "harvest-lots": lambda at: {
        "code": "SQ-2",
        "field": at["fields"].pk,
        "crop": "Winter squash",
        "harvested_on": "2026-09-14",
        "mass_kg": "900 lb",
        "use": "food",
        "status": "organic",
    },
    "storages": lambda at: {
        "lot": at["harvest-lots"].pk,
        "stored_on": "2026-09-15",
        "place": "Barn loft",
        "mass_kg": "300 lb",
    },
    "sales": lambda at: {
        "lot": at["harvest-lots"].pk,
        "sold_on": "2026-09-16",
        "buyer": "The co-op",
        "mass_kg": "200 lb",
        "status": "organic",
    },
    "suppliers": lambda at: {"name": "Lake Seed", "part": "supplier"},
    "equipment": lambda at: {"name": "Flail mower", "part": "mower", "width_m": "6 ft"},
    "input-lots": lambda at: {
        "product": at["input-products"].pk,
        "lot_number": "LC-9",
        "supplier": "Lake Seed",
        "received_on": "2026-04-03",
        "amount": "2 ton",
        "invoice": "R-14",
    },
    "lot-moves": lambda at: {
        "lot": at["seed-lots"].pk,
        "what": "brought_back",
        "moved_on": "2026-06-02",
        "mass_kg": "3 lb",
    },
    "seed-offers": lambda at: {
        "supplier": at["suppliers"].pk,
        "kind": at.kind.pk,
        "offered_on": "2026-01-07",
        "status": "organic",
        "purity_share": "98",
        "germination_share": "90",
        **rows("prices", {"bag_kg": "50 lb", "from_bags": "1", "price": "48.50"}),
        **rows(
            "components",
            {"kind": at.kind.pk, "pure_share": "98", "germination_share": "90"},
        ),
    },
    "seed-orders": lambda at: {
        "supplier": at["suppliers"].pk,
        "drawn_up_on": "2026-02-02",
        **rows(
            "lines",
            {"kind": at.kind.pk, "status": "organic", "bag_kg": "50 lb", "bags": "3"},
        ),
        **rows(
            "dressings",
            {"product": at["input-products"].pk, "needed_kg": "12 oz", "packets": "2"},
        ),
        **rows("components", {"line": "1", "kind": at.kind.pk, "pls_share": "88"}),
    },
    "calibrations": lambda at: {
        "equipment": at["equipment"].pk,
        "kind": at.kind.pk,
        "calibrated_on": "2026-05-21",
        "setting": "36",
        "caught_kg": "1.1 lb",
        "distance_m": "145.2 ft",
        "row_width_m": "7.5 in",
        "rows": "8",
        "wanted_kg_m2": "50 lb/ac",
    },
    "stock-counts": lambda at: {
        "counted_on": "2026-09-01",
        "harvest_lot": at["harvest-lots"].pk,
        "mass_kg": "650 lb",
    },
    "clean-outs": lambda at: {
        "equipment": at["equipment"].pk,
        "cleaned_on": "2026-05-28",
        "held_before": "Treated maize",
        "method": "Emptied, vacuumed",
    },
    "incidents": lambda at: {
        "noticed_on": "2026-06-20",
        "what": "drift",
        "field": at["fields"].pk,
        "account": "A smell along the west side.",
    },
    "trainings": lambda at: {
        "trained_on": "2026-03-02",
        "person": "J. Doe",
        "subject": "workers",
        "topic": "Worker protection",
    },
    "applicator-licences": lambda at: {
        "holder": "J. Doe",
        "number": "NE 0001",
        "state": "Nebraska",
        "since": "2025-01-01",
        "until": "2027-12-31",
    },
    "rules-followed": lambda at: {"which": "food", "since": "2025-01-01"},
    "certifier-numbers": lambda at: {
        "key": "organic_us.manure.contact_days",
        "low": "60",
        "high": "400",
        "value": "150",
        "note": "Said at the inspection",
        "document": "Letter of May",
    },
    "finding-replies": lambda at: {
        "key": "edges.edge_open.edges.1",
        "finding": "An open edge",
        "reply": "A hedge was set in spring.",
        "replied_on": "2026-06-01",
    },
    "changes-told": lambda at: {
        "key": "2026.inputs.came.Soap",
        "change": "New: Soap",
        "told_on": "2026-06-01",
        "how": "By telephone",
    },
    "own-assumptions": lambda at: {
        "key": "bloom_days",
        "unit": "days",
        "low": "1",
        "high": "9",
        "value": "4",
        "reason": "Counted here",
    },
}
