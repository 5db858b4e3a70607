"""The usual caution for each hazard, and who has the last word."""

from collections.abc import Mapping

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

CAUTIONS: Mapping[str, Promise] = {
    "fagopyrism": _(
        "Grazing: stock that eat much green buckwheat can burn in sunlight, light "
        "skin first. Ask your veterinarian before you graze or feed it."
    ),
    "allergen": _(
        "Food: some people react badly to this seed, and to its dust. Keep it apart "
        "from other food and grain, and say so to crew and buyers."
    ),
    "near_wheat": _(
        "Grain: its seed in wheat can get a load refused. Ask your buyer how far away "
        "and how many years apart to keep them."
    ),
    "prussic_acid": _(
        "Grazing: young, wilted or frosted growth can hold prussic acid, which kills "
        "quickly. Ask your veterinarian or Extension how tall and how long to wait."
    ),
    "nitrate": _(
        "Feeding: after drought, cloud or much nitrogen it can hold too much nitrate. "
        "Have the forage tested, and ask your veterinarian or Extension."
    ),
    "bloat": _(
        "Grazing: stock can bloat on a lush stand. Ask your veterinarian before you "
        "turn them in."
    ),
    "vetch_toxicosis": _(
        "Grazing: hairy vetch has poisoned cattle and horses. Ask your veterinarian "
        "before you graze or feed it."
    ),
    "poison_seed": _(
        "Seed: the seed is poisonous to stock. Keep it from animals, and ask your "
        "veterinarian before a stand with seed is grazed or fed."
    ),
    "crotalaria_seed": _(
        "Seed: crotalaria seed harms stock, and is limited in grain. Keep it out of "
        "feed and harvested grain, and ask your veterinarian."
    ),
    "noxious_listed": _(
        "Weed law: some places list it as a noxious weed. Look at your state’s or "
        "province’s list before you sow."
    ),
    "volunteer": _("It can come back as a weed. End it before its seed can sprout."),
    "herbicide_carryover": _(
        "Sprays: an earlier spray may hold this crop back, or forbid grazing or "
        "harvesting it. Read the label; ask the licensed applicator."
    ),
    "glucosinolate": _(
        "Feeding: brassicas can harm stock that eat little else. Ask your "
        "veterinarian or Extension how to bring them on to it."
    ),
    "horses": _(
        "Horses: do not graze or feed this to horses before you have asked your "
        "veterinarian."
    ),
    "johnsongrass": _(
        "Seed can carry johnsongrass, or cross with it. Read the tag, and look at "
        "your state’s noxious-weed list."
    ),
    "allelopathy": _(
        "Fresh residue can hold back the crop sown after it, small seed most of all. "
        "Wait, or set transplants."
    ),
    "crown_rot": _(
        "Disease: it can carry a rot of the crown that other crops catch. Leave years "
        "between them, and ask Extension which crops catch it where you are."
    ),
    "moldy_hay": _(
        "Feeding: hay of it that has gone moldy can make stock bleed. Do not feed "
        "moldy hay, and ask your veterinarian."
    ),
    "brassica_rotation": _(
        "Rotation: it shares pests and diseases with cabbage and its kin. Count it as "
        "a brassica in the rotation."
    ),
}
