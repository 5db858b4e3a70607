"""The closed lists a catalogue figure may use, and its names in other tables."""


def words(text):
    return frozenset(text.split())


UNITS = frozenset(
    {
        "lb/ac",
        "lb PLS/ac",
        "kg/ha",
        "t/ha",
        "ton/ac",
        "lb/1000 sq ft",
        "oz/1000 sq ft",
        "lb N/ac",
        "kg N/ha",
        "in",
        "ft",
        "cm",
        "m",
        "C",
        "F",
        "days",
        "weeks",
        "months",
        "years",
        "seeds/g",
        "seeds/lb",
        "lb/bu",
        "F-days",
        "per DD",
        "m2/kg",
        "share",
        "%",
        "ratio",
        "pH",
        "zone",
        "0-5",
        "none",
        "yes_no",
    }
)

ATTRIBUTES = words(
    """
    seeding_rate_drilled seeding_rate_broadcast seeding_rate_any seeding_rate_small
    seeding_depth seeds_per_gram seeds_per_lb min_soil_temp sow_soil_temp
    latest_sowing_before_frost frost_free_needed wait_before_sowing bushel_weight
    germination_standard germ_test_first_count germ_test_final_count
    seed_storage_limit emergence_days canopy_days first_flower_days full_bloom_days
    first_seed_days viable_seed_days seed_mature_days bloom_duration days_in_ground
    end_after_flower_days mow_window_days work_in_window_days regrowth_bloom_limit
    tarp_days mow_height mow_stubble heat_base heat_closure heat_biomass heat_needed
    heat_needed_base growth_temp_base growth_temp_optimum heat_limit kill_temp
    frost_tolerance cold_hardy_to hardiness_zone_min winterkill_zone_max dry_matter
    nitrogen_percent nitrogen_total nitrogen_fixed nitrogen_scavenged
    nitrogen_to_next nitrogen_needed cn_ratio plant_back_days decay_k leaf_share
    cover_area weed_suppression weed_emergence_reduction weed_growth_reduction
    engineered_sold perennial
    weed_rating quick_growth_rating lasting_residue_rating erosion_rating
    soil_builder_rating nitrogen_scavenger_rating phosphorus_rating topsoil_rating
    beneficials_rating disease_rating height root_depth soil_ph soil_ph_min
    graze_min_height graze_wait_light_frost graze_wait_killing_frost
    graze_wait_live_frost silage_wait wheat_distance wheat_years bloat_share
    """
)

STAGES = words(
    """
    before_bloom at_bloom flag_leaf vegetative boot heading anthesis mature straw
    green_pod hay june_sown july_sown fall_sown spring_sown by_0915 by_0922 by_1001
    by_1015 growing standing worked_in biomass weeds frost_seeded after_sod
    """
) | {""}

CAUTIONS = words(
    """
    fagopyrism allergen near_wheat prussic_acid nitrate bloat vetch_toxicosis
    poison_seed crotalaria_seed noxious_listed volunteer herbicide_carryover
    glucosinolate horses johnsongrass allelopathy crown_rot moldy_hay
    brassica_rotation
    """
)

# Kind of ours -> name in the table of handbook figures.
SPECIES = {
    "buckwheat": "buckwheat",
    "sorghum-sudangrass": "sorghum-sudangrass",
    "sudangrass": "sorghum-sudangrass",
    "pearl-millet": "pearl millet",
    "japanese-millet": "Japanese millet",
    "foxtail-millet": "foxtail millet",
    "cowpea": "cowpea",
    "sunn-hemp": "sunn hemp",
    "soybean": "soybean (cover)",
    "soybean-grain": "soybean (cover)",
    "oats": "oats",
    "barley": "barley",
    "cereal-rye": "cereal rye",
    "winter-wheat": "winter wheat",
    "winter-wheat-grain": "winter wheat",
    "triticale": "triticale",
    "annual-ryegrass": "annual ryegrass",
    "crimson-clover": "crimson clover",
    "red-clover": "red clover",
    "white-clover": "white clover",
    "berseem-clover": "berseem clover",
    "hairy-vetch": "hairy vetch",
    "austrian-winter-pea": "field pea",
    "field-pea": "field pea",
    "forage-radish": "forage radish",
    "white-mustard": "mustard (white/brown)",
    "brown-mustard": "mustard (white/brown)",
    "phacelia": "phacelia",
}

# Kind of ours -> name in the federal table of seeds per gram.
FEDERAL = {
    "alfalfa": "Alfalfa",
    "annual-ryegrass": "Ryegrass annual",
    "barley": "Barley",
    "berseem-clover": "Clover berseem",
    "brown-mustard": "Mustard india",
    "buckwheat": "Buckwheat",
    "cereal-rye": "Rye",
    "cowpea": "Cowpea",
    "crimson-clover": "Clover crimson",
    "field-pea": "Pea field",
    "flax": "Flax",
    "forage-radish": "Radish (vegetable)",
    "foxtail-millet": "Millet foxtail",
    "grain-sorghum": "Sorghum",
    "hairy-vetch": "Vetch hairy",
    "japanese-millet": "Millet japanese",
    "oats": "Oat",
    "pearl-millet": "Millet pearl",
    "proso-millet": "Millet proso",
    "radish": "Radish (vegetable)",
    "red-clover": "Clover red",
    "sorghum-sudangrass": "Sorghum-sudangrass",
    "soybean": "Soybean",
    "soybean-grain": "Soybean",
    "spelt": "Spelt",
    "sudangrass": "Sudangrass",
    "sunflower": "Sunflower",
    "sunn-hemp": "Crotalaria sunn",
    "sweet-clover": "Sweetclover yellow",
    "triticale": "Triticale",
    "turnip": "Turnip (vegetable)",
    "white-clover": "Clover white",
    "white-mustard": "Mustard white",
    "winter-wheat": "Wheat common",
    "winter-wheat-grain": "Wheat common",
    "woollypod-vetch": "Vetch woollypod",
}

# Attribute of ours -> its other names in the table of handbook figures.
HANDBOOK_NAMES = {
    attribute: words(names)
    for attribute, names in {
        "perennial": "type",
        "seeding_rate_drilled": "seeding_rate_drilled_0915 seeding_rate_drilled_0922"
        " seeding_rate_drilled_1001 seeding_rate_drilled_1015",
        "seeding_rate_broadcast": "seeding_rate_frost seeding_rate_broadcast_0915"
        " seeding_rate_broadcast_0922 seeding_rate_broadcast_1001"
        " seeding_rate_broadcast_1015",
        "seeding_rate_any": "seeding_rate_biomass seeding_rate_weeds",
        "seeds_per_gram": "seeds_per_gram_white seeds_per_gram_brown"
        " seeds_per_gram_sudangrass",
        "min_soil_temp": "min_soil_temp_germination",
        "sow_soil_temp": "recommended_soil_temp_sowing min_soil_temp_germination",
        "latest_sowing_before_frost": "latest_sowing_before_first_frost"
        " sow_before_first_frost",
        "wait_before_sowing": "wait_after_residue_incorporation wait_after_sod_tillage",
        "bushel_weight": "bushel_weight_sudangrass",
        "germination_standard": "germination_standard_sudangrass",
        "first_flower_days": "early_flowering_days flowering_days",
        "full_bloom_days": "peak_flowering_days",
        "first_seed_days": "first_visible_seed_days seed_fill_days",
        "viable_seed_days": "first_viable_seed_days",
        "seed_mature_days": "seeds_begin_mature_days",
        "days_in_ground": "cover_days",
        "end_after_flower_days": "terminate_after_flowering",
        "mow_window_days": "terminate_days_mow",
        "work_in_window_days": "terminate_days_incorporate",
        "regrowth_bloom_limit": "mow_regrowth_limit",
        "tarp_days": "terminate_tarp terminate_tarp_rye_vetch",
        "heat_biomass": "gdd_to_target_biomass",
        "heat_needed": "gdd_needed gdd_fall_needed",
        "heat_needed_base": "gdd_needed gdd_fall_needed",
        "growth_temp_optimum": "optimum_growth_temp",
        "heat_limit": "seed_set_heat_limit",
        "kill_temp": "frost_kill_temp winterkill_temp winterkill",
        "cold_hardy_to": "winter_hardiness cold_tolerance",
        "hardiness_zone_min": "hardiness_zone winter_zone",
        "winterkill_zone_max": "winterkill_zone",
        "dry_matter": "dry_matter_fall dry_matter_spring dry_matter_flag_leaf"
        " dry_matter_preflower dry_matter_by_stage dry_matter_grasses_NC"
        " dry_matter_legumes_NC dry_matter_fertilized",
        "nitrogen_total": "n_total n_content n_grasses_NC n_legumes_NC n_by_stage",
        "nitrogen_fixed": "n_fixed",
        "nitrogen_scavenged": "n_scavenged",
        "nitrogen_to_next": "n_to_next_crop",
        "nitrogen_needed": "n_needed n_requirement n_fertilizer_spring",
        "cn_ratio": "cn_ratio_101d cn_ratio_anthesis cn_ratio_green_pod cn_ratio_hay"
        " cn_ratio_heading cn_ratio_mature_pod cn_ratio_straw cn_ratio_vegetative"
        " cn_ratio_vegetative_sorghum",
        "plant_back_days": "plant_back plant_back_winter_cover",
        "weed_suppression": "weed_suppression_stand",
        "weed_emergence_reduction": "weed_suppression_emergence",
        "weed_growth_reduction": "weed_suppression_growth weed_suppression_dry_weight",
        "weed_rating": "rating_weed",
        "quick_growth_rating": "rating_quick_growth",
        "lasting_residue_rating": "rating_lasting_residue",
        "erosion_rating": "rating_erosion",
        "soil_builder_rating": "rating_soil_builder",
        "nitrogen_scavenger_rating": "rating_n_scavenger",
        "phosphorus_rating": "rating_p_k",
        "topsoil_rating": "rating_loosen_topsoil",
        "beneficials_rating": "rating_beneficials",
        "disease_rating": "rating_disease",
        "root_depth": "root_depth_main",
        "soil_ph": "soil_pH",
        "soil_ph_min": "soil_pH_min",
        "graze_min_height": "prussic_min_height",
        "graze_wait_light_frost": "prussic_wait_light_frost",
        "graze_wait_killing_frost": "prussic_wait_killing_freeze",
        "graze_wait_live_frost": "prussic_wait_nonkilling",
        "silage_wait": "prussic_silage_wait",
        "wheat_distance": "wheat_exclusion_distance",
        "wheat_years": "wheat_exclusion_years",
        "bloat_share": "bloat_legume_share",
    }.items()
}

HANDBOOK_UNITS = {
    "USDA zone": "zone",
    "USDA zone (moderate)": "zone",
    "USDA zone or warmer": "zone",
    "USDA zone and colder": "zone",
    "GDD": "F-days",
    "GDD base 32 F": "F-days",
    "GDD base 40 F": "F-days",
    "calendar years": "years",
}
