"""The caution at the moment of an act, and who has the last word on it."""

from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.acts import Act

ACT = {
    Act.GRAZE: _(
        "Grazing: let animals in hungry and all at once, and a stand that is good for "
        "soil can make them ill. Ask your veterinarian or Extension about this kind "
        "and these animals before the gate opens, and look at them often."
    ),
    Act.FEED: _(
        "Feeding: what is carried off as feed keeps what is poisonous in it. Ask your "
        "veterinarian or Extension first, and have it tested where nitrate may be high."
    ),
    Act.SPRAY: _(
        "Spraying: only by the label and by who is licensed for it. The label says how "
        "long nobody may go in, and what may be planted next. On organic ground ask "
        "your certifier before."
    ),
    Act.BURN: _(
        "Burning: many places forbid it or ask for a permit, and the wind turns. Ask "
        "the fire department and your certifier before you light it."
    ),
    Act.MACHINE: _(
        "Machines: for people trained on them, with the guards on. Stop the engine "
        "before anybody reaches in, keep children and helpers away, mind the slope."
    ),
    Act.AFTER_SEED: _(
        "Seed has set: what is cut now sheds seed that comes up in the next crop. Look "
        "into the stand before you cut, and plan for what will come up."
    ),
    Act.MANURE: _(
        "Manure: raw manure and food do not mix. The waiting time before harvest "
        "begins when it is worked in; look at the current rule with your certifier, "
        "keep away from water, wash hands and tools."
    ),
}
LISTS = (ACT,)
