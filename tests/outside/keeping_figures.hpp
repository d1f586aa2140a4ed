// Published keeping times, restated as they stand in their sources, each with the places it speaks of and the
// ingredients and families of ours that it covers. "seen": read in a copy of the source; "from memory": to be verified
// before it is leaned on; "second-hand": a figure that another text gives for its source.
#pragma once

namespace samebase::tests {

/// Item | value | unit | condition | status | place | our ingredients and families.
/// Left out: fresh uncured ham and whole cooked ham, which we do not have; "freeze raw meat that is not used within 2
/// days of purchase" (NSW Government), which says when to freeze and not how long it keeps, and the same page gives 3
/// days for wrapped meat; "held at -18 C indefinitely", which is about safety only.
inline constexpr const char* cold_storage_figures = R"(
@ US HHS/FoodSafety.gov, Cold Food Storage Chart (rev. 2021-24; api.digitalmedia.hhs.gov syndication + stored copies)
salads: egg, chicken, ham, tuna, macaroni | 3-4 | days | fridge; 4 C (40 F) or below | seen | fridge | leftover-potato-salad leftover-pasta-salad
salads: egg, chicken, ham, tuna, macaroni | does not freeze well |  | freezer (quality only); -18 C (0 F) or below | seen | freezer | leftover-potato-salad leftover-pasta-salad
hot dogs, opened | 1 | week | fridge; 4 C (40 F) or below | seen | opened | frankfurts
hot dogs, opened | 1-2 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | frankfurts
hot dogs, unopened | 2 | weeks | fridge; 4 C (40 F) or below | seen | fridge | frankfurts
hot dogs, unopened | 1-2 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | frankfurts
luncheon/deli meat, opened or deli sliced | 3-5 | days | fridge; 4 C (40 F) or below | seen | opened | ham salami prosciutto
luncheon/deli meat, opened or deli sliced | 1-2 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | ham salami prosciutto cold-corned-beef cold-ham-slices
luncheon/deli meat, unopened | 2 | weeks | fridge; 4 C (40 F) or below | seen | fridge | ham salami prosciutto
luncheon/deli meat, unopened | 1-2 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | ham salami prosciutto
bacon | 1 | week | fridge; 4 C (40 F) or below | seen | fridge opened | bacon pancetta
bacon | 1 | month | freezer (quality only); -18 C (0 F) or below | seen | freezer | bacon pancetta
sausage, raw (chicken, turkey, pork, beef) | 1-2 | days | fridge; 4 C (40 F) or below | seen | fridge opened | beef-sausages pork-sausages lamb-sausages chicken-sausages
sausage, raw (chicken, turkey, pork, beef) | 1-2 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | beef-sausages pork-sausages lamb-sausages chicken-sausages
sausage, fully cooked | 1 | week | fridge; 4 C (40 F) or below | seen | fridge opened | chorizo
sausage, fully cooked | 1-2 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | chorizo
sausage bought frozen, after cooking | 3-4 | days | fridge; 4 C (40 F) or below | seen | fridge | cold-sausages
sausage bought frozen, after cooking | 1-2 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | cold-sausages
mince/ground meat or poultry, raw | 1-2 | days | fridge; 4 C (40 F) or below | seen | fridge opened | mince
mince/ground meat or poultry, raw | 3-4 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | mince
steaks (beef, veal, lamb, pork), raw | 3-5 | days | fridge; 4 C (40 F) or below | seen | fridge opened | rump-steak stir-fry-beef-strips veal-schnitzel
steaks (beef, veal, lamb, pork), raw | 4-12 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | rump-steak stir-fry-beef-strips veal-schnitzel
chops (beef, veal, lamb, pork), raw | 3-5 | days | fridge; 4 C (40 F) or below | seen | fridge opened | lamb-chops pork-chops
chops (beef, veal, lamb, pork), raw | 4-12 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | lamb-chops pork-chops
roasts (beef, veal, lamb, pork), raw | 3-5 | days | fridge; 4 C (40 F) or below | seen | fridge opened | beef-roast lamb-leg lamb-shoulder pork-shoulder pork-loin-roast pork-belly brisket pork-fillet
roasts (beef, veal, lamb, pork), raw | 4-12 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | beef-roast lamb-leg lamb-shoulder pork-shoulder pork-loin-roast pork-belly brisket pork-fillet
ham, cured cook-before-eating uncooked | 5-7 | days | fridge; 4 C (40 F) or below | seen | fridge opened | smoked-hock
ham, cured cook-before-eating uncooked | 3-4 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | smoked-hock
ham, cooked store-wrapped slices/half/spiral (2021 text) | 3-5 | days | fridge; 4 C (40 F) or below | seen | fridge opened | ham cold-ham-slices
ham, cooked store-wrapped slices/half/spiral (2021 text) | 1-2 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | ham cold-ham-slices
ham, cooked store-wrapped slices/half/spiral (later text) | 3-4 | days | fridge; 4 C (40 F) or below | seen | fridge opened | ham cold-ham-slices
ham, cooked store-wrapped slices/half/spiral (later text) | 1-2 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | ham cold-ham-slices
chicken or turkey whole, raw | 1-2 | days | fridge; 4 C (40 F) or below | seen | fridge opened | whole-chicken
chicken or turkey whole, raw | 12 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | whole-chicken
chicken or turkey pieces, raw | 1-2 | days | fridge; 4 C (40 F) or below | seen | fridge opened | chicken-thigh chicken-breast chicken-drumsticks chicken-marylands chicken-wings turkey-breast
chicken or turkey pieces, raw | 9 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | chicken-thigh chicken-breast chicken-drumsticks chicken-marylands chicken-wings turkey-breast
eggs, raw in shell | 3-5 | weeks | fridge; 4 C (40 F) or below | seen | fridge | eggs duck-eggs
eggs, raw in shell | do not freeze in shell |  | freezer (quality only); -18 C (0 F) or below | seen | freezer | eggs duck-eggs
egg whites and yolks, raw | 2-4 | days | fridge; 4 C (40 F) or below | seen | fridge opened | egg-whites egg-yolks
egg whites and yolks, raw | 12 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | egg-whites egg-yolks
leftovers: cooked meat or poultry | 3-4 | days | fridge; 4 C (40 F) or below | seen | fridge | cold-roast-meat cold-cooked-mince cooked-sausages cold-poultry-dishes
leftovers: cooked meat or poultry | 2-6 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | cold-roast-meat cold-cooked-mince cooked-sausages cold-poultry-dishes
leftovers: pizza | 3-4 | days | fridge; 4 C (40 F) or below | seen | fridge | leftover-pizza
leftovers: pizza | 1-2 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | leftover-pizza
@ US FDA/USDA Cold Storage Chart (earlier edition of the same chart; stored copies)
salads: egg, chicken, ham, tuna, macaroni | 3-5 | days | fridge; 4 C (40 F) or below | seen | fridge | leftover-potato-salad leftover-pasta-salad
steaks, raw | 6-12 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | rump-steak stir-fry-beef-strips veal-schnitzel
chops, raw | 4-6 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | lamb-chops pork-chops
roasts, raw | 4-12 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | beef-roast lamb-leg lamb-shoulder pork-shoulder pork-loin-roast pork-belly brisket pork-fillet
eggs, hard-cooked | 1 | week | fridge; 4 C (40 F) or below | seen | fridge | hard-boiled-eggs
eggs, hard-cooked | do not freeze |  | freezer (quality only); -18 C (0 F) or below | seen | freezer | hard-boiled-eggs
soups and stews with meat or vegetables | 3-4 | days | fridge; 4 C (40 F) or below | seen | fridge | leftover-soups leftover-stews
soups and stews with meat or vegetables | 2-3 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | leftover-soups leftover-stews
leftovers: chicken nuggets or patties | 3-4 | days | fridge; 4 C (40 F) or below | seen | fridge | cold-chicken-schnitzel
leftovers: chicken nuggets or patties | 1-3 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | cold-chicken-schnitzel
@ USDA FSIS / food-safety partnership leaflet, Cold Food Storage Guidelines, Aug 2006 (stored copy)
cooked meat, poultry, fish; soups, stews, casseroles (2006 leaflet) | 3-4 | days | fridge; 4 C (40 F) or below | seen | fridge | cold-roast-meat cold-cooked-mince cooked-sausages cold-poultry-dishes cold-fish leftover-soups leftover-stews
cooked meat, poultry, fish; soups, stews, casseroles (2006 leaflet) | 2-3 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | cold-roast-meat cold-cooked-mince cooked-sausages cold-poultry-dishes cold-cooked-fish cold-cooked-salmon leftover-fish-pie cold-fish-cakes leftover-soups leftover-stews
milk, opened (2006 leaflet) | 7 | days | fridge; 4 C (40 F) or below | seen | opened | milk skim-milk goat-milk uht-milk
milk, opened (2006 leaflet) | 3 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | milk skim-milk goat-milk
cheese, hard (2006 leaflet) | 3-4 | weeks | fridge; 4 C (40 F) or below | seen | fridge opened | hard-cheese melting-cheese
cheese, hard (2006 leaflet) | 6 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | hard-cheese melting-cheese
fresh fish (2006 leaflet) | 1-2 | days | fridge; 4 C (40 F) or below | seen | fridge opened | white-fish oily-fish
fresh fish (2006 leaflet) | 3-6 | months | freezer (quality only); -18 C (0 F) or below | seen | freezer | white-fish oily-fish
@ CSIRO, Refrigerated storage of perishable foods: Refrigerating products, table (csiro.au) (row label confirmed through Victorian Government, food-waste programme page quoting CSIRO shelf-life table (vic.gov.au))
seafood/finfish raw | 3 | days | fridge; coldest part of fridge | seen | fridge opened | white-fish oily-fish
meat, whole cuts raw | 3-5 | days | fridge; coldest part of fridge | seen | fridge opened | stewing-meat steaks-and-chops beef-roast lamb-leg lamb-shoulder pork-shoulder pork-loin-roast pork-belly brisket pork-fillet
poultry raw | 3 | days | fridge; coldest part of fridge | seen | fridge opened | poultry
milk | 5-7 | days | fridge; coldest part of fridge | seen | fridge opened | milk skim-milk goat-milk
cream | 5 | days | fridge; coldest part of fridge | seen | fridge opened | cream thickened-cream light-cream
hard cheese | variable (1-3 months) |  | fridge; coldest part of fridge | seen | fridge opened | hard-cheese melting-cheese
eggs | 3-6 | weeks | fridge; coldest part of fridge | seen | fridge | eggs duck-eggs
@ CSIRO, Refrigerated storage of perishable foods: Refrigerating products, table (csiro.au)
crustaceans and molluscs raw | 2 | days | fridge; coldest part of fridge | seen | fridge opened | crustaceans molluscs
mince and offal raw | 2-3 | days | fridge; coldest part of fridge | seen | fridge opened | mince offal
cured meat | 2-3 | weeks | fridge; coldest part of fridge | seen | fridge opened | cured-meat corned-silverside
fruit juices | 7-14 | days | fridge; coldest part of fridge | seen | fridge | fruit-juice citrus-juice
soft cheese (camembert, brie) | 2-3 | weeks | fridge; coldest part of fridge | seen | fridge opened | brie camembert
cottage, ricotta, cream cheese | 10 | days | fridge; coldest part of fridge | seen | fridge opened | cottage-cheese ricotta cream-cheese
butter | 8 | weeks | fridge; coldest part of fridge | seen | fridge opened | butter
margarine | variable (6 months) |  | fridge; coldest part of fridge | seen | fridge | margarine dairy-free-margarine
oil and fat | variable (6 months) |  | fridge; coldest part of fridge | seen | fridge | oils lard dripping ghee vegetable-shortening
@ CSIRO, Food handling in the home fact sheet (csiro.au)
mince, liver, kidneys, poultry, seafood raw | 3 | days | fridge as near 0 C as possible; longest recommended | seen | fridge opened | mince offal poultry white-fish oily-fish crustaceans molluscs
@ NSW Government, Storing meat and poultry page (nsw.gov.au)
wrapped fresh meat | 3 | days | fridge 0-3 C | seen | fridge opened | stewing-meat steaks-and-chops beef-roast lamb-leg lamb-shoulder pork-shoulder pork-loin-roast pork-belly brisket pork-fillet
@ Safe Food Production Queensland, Frozen food storage table (safefood.qld.gov.au)
bacon | 1 | months | freezer | seen | freezer | bacon pancetta
sausage raw (chicken, pork, beef) | 1-2 | months | freezer | seen | freezer | beef-sausages pork-sausages lamb-sausages chicken-sausages
beef mince | 3 | months | freezer | seen | freezer | beef-mince
steaks beef/veal/lamb/pork | 6-12 | months | freezer | seen | freezer | rump-steak stir-fry-beef-strips veal-schnitzel
chops | 4-6 | months | freezer | seen | freezer | lamb-chops pork-chops
roasts | 4-12 | months | freezer | seen | freezer | beef-roast lamb-leg lamb-shoulder pork-shoulder pork-loin-roast pork-belly brisket pork-fillet
chicken whole | 12 | months | freezer | seen | freezer | whole-chicken
chicken pieces | 9 | months | freezer | seen | freezer | chicken-thigh chicken-breast chicken-drumsticks chicken-marylands chicken-wings
duck | 3 | months | freezer | seen | freezer | whole-duck duck-legs
leftover cooked meat or poultry | 2-6 | months | freezer | seen | freezer | cold-roast-meat cold-cooked-mince cooked-sausages cold-poultry-dishes
chicken nuggets or patties | 1-3 | months | freezer | seen | freezer | cold-chicken-schnitzel
pizza | 1-2 | months | freezer | seen | freezer | leftover-pizza
fish fillets | 3-6 | months | freezer | seen | freezer | white-fish trout-fillets mackerel-fillets
shellfish | 2 | months | freezer | seen | freezer | molluscs crab-meat
salmon | 2 | months | freezer | seen | freezer | salmon-fillets
prawns | 1 | months | freezer | seen | freezer | prawns cold-cooked-prawns
@ NSW Food Authority, Leftovers page (foodauthority.nsw.gov.au)
leftovers, cooked | 3 | days | fridge below 5 C | seen | fridge | cold-roast-meat cold-cooked-mince cooked-sausages leftover-stews cold-fish cold-poultry-dishes cooked-rice-dishes cooked-grains cooked-pasta-dishes cooked-potatoes cooked-vegetables leftover-soups leftover-egg-dishes leftover-pies-and-pastry leftover-salads cooked-pulses-home bones
cooked rice and cooked pasta | 2 | days | fridge below 5 C | seen | fridge | cooked-rice-dishes cooked-pasta-dishes
leftovers, cooked | 3 | months | freezer; up to | seen | freezer | cold-roast-meat cold-cooked-mince cooked-sausages leftover-stews cold-fish cold-poultry-dishes cooked-rice-dishes cooked-grains cooked-pasta-dishes cooked-potatoes cooked-vegetables leftover-soups leftover-egg-dishes leftover-pies-and-pastry leftover-salads cooked-pulses-home bones
@ NZ Ministry for Primary Industries, Treat your leftovers right (mpi.govt.nz)
rice-based leftovers | 2 | days | fridge | seen | fridge | cooked-rice-dishes
cooked food eaten cold (pasta/potato/roast veg salads) | 2 | days | fridge | seen | fridge | leftover-salads leftover-pasta-salad
leftovers eaten hot | 4 | days | fridge; reheat over 75 C | seen | fridge | cold-roast-meat cold-cooked-mince cooked-sausages leftover-stews cold-fish cold-poultry-dishes cooked-rice-dishes cooked-grains cooked-pasta-dishes cooked-potatoes cooked-vegetables leftover-soups leftover-egg-dishes leftover-pies-and-pastry leftover-salads cooked-pulses-home bones
@ Food Safety Information Council (Australia), Leftovers page (foodsafety.asn.au)
leftovers, perishable | 2-3 | days | fridge | seen | fridge | cold-roast-meat cold-cooked-mince cooked-sausages leftover-stews cold-fish cold-poultry-dishes cooked-rice-dishes cooked-grains cooked-pasta-dishes cooked-potatoes cooked-vegetables leftover-soups leftover-egg-dishes leftover-pies-and-pastry leftover-salads cooked-pulses-home bones
@ US FoodSafety.gov Cold Food Storage Chart
eggs in casseroles, after baking | 3-4 | days | fridge 4 C or below | from memory: verify before use | fridge | leftover-frittata leftover-omelette-slice
quiche, after baking | 3-5 | days | fridge 4 C or below | from memory: verify before use | fridge | leftover-quiche
@ US FoodSafety.gov Cold Food Storage Chart (current)
shrimp, scallops raw | 3-5 | days | fridge 4 C or below | from memory: verify before use | fridge | prawns scallops
crab meat fresh | 2-4 | days | fridge 4 C or below | from memory: verify before use | fridge | crab-meat
@ US HHS/FoodSafety.gov, Cold Food Storage Chart, as the list of disagreements between the tables above restates it
fatty fish | 2-3 | months | freezer | second-hand | freezer | oily-fish
lean fish | 4-8 | months | freezer | second-hand | freezer | white-fish
@ FSA/IIR, as the list of disagreements between the tables above restates it
eggs | 2-4 | weeks | fridge | second-hand | fridge | eggs duck-eggs
fresh fish | 1-2 | days | fridge | second-hand | fridge opened | white-fish oily-fish
@ a leaflet, as the list of disagreements between the tables above restates it
soft cheese and cream cheese | 1 | week | fridge | second-hand | fridge opened | brie camembert cream-cheese
)";

/// The same for vegetables, fruit and bread: what is said of homes, and the column for 5 C of the Australian table.
/// Lives in an ideal store (0 to 13 C, very moist) are not those of a crisper and are left out; pumpkins are not put in
/// a crisper.
inline constexpr const char* vegetable_life_figures = R"(
@ University of Missouri Extension MP558, Storing Food in the Refrigerator, p. 4; 37 F (2.8 C) (extension.missouri.edu)
sweetcorn in husk | 1-2 | days | home fridge crisper at 2.8 C | seen | fridge crisper | corn-cob
beans, green | 1-2 | days | home fridge crisper at 2.8 C | seen | fridge crisper | green-beans
beetroot | 1-2 | weeks | home fridge crisper at 2.8 C | seen | fridge crisper | beetroot
carrots | 1-2 | weeks | home fridge crisper at 2.8 C | seen | fridge crisper | carrot
lettuce, head, unwashed | 5-7 | days | home fridge crisper at 2.8 C | seen | fridge crisper | lettuce cos-lettuce
lettuce, head, washed | 3-5 | days | home fridge crisper at 2.8 C | seen | fridge crisper | lettuce cos-lettuce
mushrooms | 1-2 | days | home fridge crisper at 2.8 C | seen | fridge crisper | button-mushrooms field-mushrooms swiss-brown-mushrooms shiitake
peas, unshelled | 3-5 | days | home fridge crisper at 2.8 C | seen | fridge crisper | peas-in-pod
@ University of Maryland Extension, Storing garden produce (extension.umd.edu)
salad greens (lettuce, spinach, silverbeet, collards) | 2-4 | days | home; fridge, perforated bag | seen | fridge crisper | rocket mixed-leaves endive watercress spinach silverbeet beet-greens collard-greens
beetroot, carrots, parsnips, radish, turnips | 1-2 | weeks | home; fridge crisper | seen | fridge crisper | beetroot carrot parsnip radish turnip
capsicum | 5 | days max | home; fridge | seen | fridge crisper | capsicum
cut melon | 3-4 | days | home; fridge | seen | opened | melons
peaches, pears, nectarines | 5 | days | home; fridge crisper | seen | fridge crisper | peach nectarine pear
@ Same university table, fuller republished copy (bassfarms.org)
beans, green | 3 | days max | home fridge crisper | seen | fridge crisper | green-beans
Brussels sprouts | 1-2 | days | home fridge crisper | seen | fridge crisper | brussels-sprouts
beetroot, carrots, parsnips, radish, turnips | 1-2 | weeks | home fridge crisper | seen | fridge crisper | beetroot carrot parsnip radish turnip
@ Sustainability Victoria, Guide for storing fresh produce (sustainability.vic.gov.au)
avocado | 7 | days max | home | seen | fridge crisper | avocado
cauliflower | 1-2 | weeks | home | seen | fridge crisper | cauliflower
bananas | 7 | days max, bench | home | seen | pantry | banana
bread | 2-5 | days, pantry | home | seen | pantry | white-bread wholemeal-bread sourdough bread-rolls baguette gluten-free-bread rye-bread pita-bread naan lavash stale-bread
@ Queensland Dept of Environment and Science, Fruits and vegetables that last (2023-09-19; des.qld.gov.au)
apples | 2 | weeks or more | home crisper | seen | fridge crisper | apple
avocado | 3-5 | days | home | seen | fridge crisper | avocado
@ Wisconsin Nutrition Education Program, Keeping Food Safe (2005), Storing fresh vegetables (reprinted copy)
carrots, turnips, swede | 1 | month max | home fridge | seen | fridge crisper | carrot turnip swede
@ Postharvest.net.au (Australian industry postharvest programme), Storage temperatures summary table
buk choy | 2-3 | weeks | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | buk-choy
gai lan | 7-10 | days | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | gai-lan
pak choy | 10-14 | days | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | buk-choy
wombok | 3 | months | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | wombok
beans, green | 6-8 | days | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | green-beans
Brussels sprouts | 1-3 | weeks | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | brussels-sprouts
capsicum, green | 2-3 | weeks | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | capsicum
capsicum, red | 2-3 | weeks | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | capsicum
carrots | 2-3 | weeks | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | carrot
cauliflower | 7-12 | days | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | cauliflower
cucumber, green field | 2-3 | weeks | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | cucumber
cucumber, Lebanese | 5-10 | days | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | lebanese-cucumber
eggplant | 6-12 | days | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | eggplant
spring onion (green onion) | 2-3 | weeks | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | spring-onion
kale | 7-10 | days | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | kale cavolo-nero
leek | 3-4 | weeks | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | leek
lettuce, hearting | 1-2 | weeks | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | lettuce
lettuce, loose leaf | 1-2 | weeks | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | mixed-leaves
pea, edible pod | 2-3 | weeks | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | snow-peas sugar-snap-peas
pumpkin | 2-3 | weeks | household-like 5 C (estimated, from harvest not purchase) | seen | fridge | pumpkin butternut-pumpkin
silverbeet | 7-10 | days | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | silverbeet
squash, pattypan | 6-10 | days | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | button-squash
sweetcorn | 3-5 | days | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | corn-cob
sweet potato | 7-10 | days | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | sweet-potato
zucchini | 8-12 | days | household-like 5 C (estimated, from harvest not purchase) | seen | fridge crisper | zucchini
@ University of Maryland Extension, as the list of disagreements between the tables above restates it
broccoli | 3-6 | days | home fridge | second-hand | fridge crisper | broccoli broccolini
cabbage | 3-6 | days | home fridge | second-hand | fridge crisper | cabbage savoy-cabbage red-cabbage
cauliflower | 3-6 | days | home fridge | second-hand | fridge crisper | cauliflower
potato, onion | 2-4 | weeks | home cupboard | second-hand | pantry | potato onion red-onion
@ University of Missouri Extension, as the list of disagreements between the tables above restates it
leafy greens | 1-2 | days | home fridge | second-hand | fridge crisper | spinach silverbeet beet-greens collard-greens
cabbage | 1-2 | weeks | home fridge | second-hand | fridge crisper | cabbage savoy-cabbage red-cabbage
celery | 1-2 | weeks | home fridge | second-hand | fridge crisper | celery
@ Postharvest.net.au, 5 C, as the list of disagreements between the tables above restates it
broccoli | 2-3 | weeks | household-like 5 C | second-hand | fridge crisper | broccoli broccolini
spinach | 2-3 | weeks | household-like 5 C | second-hand | fridge crisper | spinach
cabbage | 2-3 | weeks | household-like 5 C | second-hand | fridge crisper | cabbage savoy-cabbage red-cabbage
celery | 2-4 | weeks | household-like 5 C | second-hand | fridge crisper | celery
pumpkin | 2-3 | months | 20 C, whole | second-hand | pantry | pumpkin butternut-pumpkin
@ a food-waste guide, as the list of disagreements between the tables above restates it
mushrooms | 2-3 | days | home fridge | second-hand | fridge crisper | button-mushrooms field-mushrooms swiss-brown-mushrooms shiitake
cauliflower | 2 | days | home fridge | second-hand | fridge crisper | cauliflower
beetroot | 3-4 | days | home fridge | second-hand | fridge crisper | beetroot
@ Wisconsin Nutrition Education Program, as the list of disagreements between the tables above restates it
potato, onion | 1-2 | months | home cupboard | second-hand | pantry | potato onion red-onion
)";

}  // namespace samebase::tests
