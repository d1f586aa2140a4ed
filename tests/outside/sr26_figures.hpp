// Household weights and edible shares of foods, restated from the USDA National Nutrient Database for Standard
// Reference, Release 26 (2013), United States public domain: files WEIGHT and FOOD_DES, by NDB number. The cup is the
// US cup of 236.588 mL, a tablespoon its sixteenth, a teaspoon its forty-eighth. The refuse is in per cent of what is
// bought, with the parts that it is. Weights of pieces are of the edible part.
#pragma once

namespace samebase::tests {

/// Our ingredient | NDB number | food | measure | grams of it | piece | grams of it | refuse
inline constexpr const char* sr26_figures = R"(
@ USDA National Nutrient Database for Standard Reference, Release 26 (2013)
plain-flour | 20081 | Wheat flour, white, all-purpose, enriched, bleached | 1 cup | 125 | | | 0
wholemeal-flour | 20080 | Wheat flour, whole-grain | 1 cup | 120 | | | 0
cornflour | 20027 | Cornstarch | 1 cup | 128 | | | 0
rice-flour | 20061 | Rice flour, white | 1 cup | 158 | | | 0
rye-flour | 20064 | Rye flour, medium | 1 cup | 102 | | | 0
buckwheat-flour | 20011 | Buckwheat flour, whole-groat | 1 cup | 120 | | | 0
semolina | 20066 | Semolina, enriched | 1 cup | 167 | | | 0
white-sugar | 19335 | Sugars, granulated | 1 tsp | 4.2 | | | 0
brown-sugar | 19334 | Sugars, brown | 1 cup packed | 220 | | | 0
icing-sugar | 19336 | Sugars, powdered | 1 cup unsifted | 120 | | | 0
white-rice | 20044 | Rice, white, long-grain, regular, raw, enriched | 1 cup | 185 | | | 0
brown-rice | 20036 | Rice, brown, long-grain, raw | 1 cup | 185 | | | 0
sushi-rice | 20052 | Rice, white, short-grain, raw | 1 cup | 200 | | | 0
couscous | 20028 | Couscous, dry | 1 cup | 173 | | | 0
bulgur | 20012 | Bulgur, dry | 1 cup | 140 | | | 0
quinoa | 20035 | Quinoa, uncooked | 1 cup | 170 | | | 0
pearl-barley | 20005 | Barley, pearled, raw | 1 cup | 200 | | | 0
rolled-oats | 08120 | Cereals, oats, regular and quick, not fortified, dry | 1 cup | 81 | | | 0
brown-lentils | 16069 | Lentils, raw | 1 cup | 192 | | | 0
dried-chickpeas | 16056 | Chickpeas (garbanzo beans, bengal gram), mature seeds, raw | 1 cup | 200 | | | 0
split-peas | 16085 | Peas, split, mature seeds, raw | 1 cup | 197 | | | 0
dried-red-beans | 16032 | Beans, kidney, red, mature seeds, raw | 1 cup | 184 | | | 0
dried-black-beans | 16014 | Beans, black, mature seeds, raw | 1 cup | 194 | | | 0
mung-beans | 16080 | Mung beans, mature seeds, raw | 1 cup | 207 | | | 0
dry-breadcrumbs | 18079 | Bread crumbs, dry, grated, plain | 1 cup | 108 | | | 0
white-bread | 18069 | Bread, white, commercially prepared (includes soft bread crumbs) | 1 cup, cubes | 35 | | | 0
salt | 02047 | Salt, table | 1 tsp | 6 | | | 0
baking-powder | 18369 | Leavening agents, baking powder, double-acting, sodium aluminum sulfate | 1 tsp | 4.6 | | | 0
baking-soda | 18372 | Leavening agents, baking soda | 1 tsp | 4.6 | | | 0
cream-of-tartar | 18373 | Leavening agents, cream of tartar | 1 tsp | 3 | | | 0
dried-yeast | 18375 | Leavening agents, yeast, baker's, active dry | 1 tsp | 4 | 1 packet | 7.2 | 0
cocoa-powder | 19165 | Cocoa, dry powder, unsweetened | 1 cup | 86 | | | 0
plain-yoghurt | 01116 | Yogurt, plain, whole milk, 8 grams protein per 8 ounce | 1 cup (8 fl oz) | 245 | | | 0
buttermilk | 01088 | Milk, buttermilk, fluid, cultured, lowfat | 1 cup | 245 | | | 0
milk | 01077 | Milk, whole, 3.25% milkfat, with added vitamin D | 1 cup | 244 | | | 0
light-cream | 01049 | Cream, fluid, half and half | 1 tbsp | 15 | | | 0
cream | 01053 | Cream, fluid, heavy whipping | 1 cup, fluid (yields 2 cups whipped) | 238 | | | 0
sour-cream | 01056 | Cream, sour, cultured | 1 cup | 230 | | | 0
cream-cheese | 01017 | Cheese, cream | 1 cup | 232 | | | 0
cottage-cheese | 01012 | Cheese, cottage, creamed, large or small curd | 1 cup, small curd (not packed) | 225 | | | 0
ricotta | 01036 | Cheese, ricotta, whole milk | 0.5 cup | 124 | | | 0
feta | 01019 | Cheese, feta | 1 cup, crumbled | 150 | | | 0
cheddar | 01009 | Cheese, cheddar | 1 cup, shredded | 113 | | | 0
parmesan | 01032 | Cheese, parmesan, grated | 1 cup | 100 | | | 0
mozzarella | 01026 | Cheese, mozzarella, whole milk | 1 cup, shredded | 112 | | | 0
butter | 01001 | Butter, salted | 1 tbsp | 14.2 | | | 0
lard | 04002 | Lard | 1 tbsp | 12.8 | | | 0
olive-oil | 04053 | Oil, olive, salad or cooking | 1 tablespoon | 13.5 | | | 0
vegetable-oil | 04044 | Oil, soybean, salad or cooking | 1 tbsp | 13.6 | | | 0
soy-sauce | 16123 | Soy sauce made from soy and wheat (shoyu) | 1 tbsp | 16 | | | 0
white-vinegar | 02053 | Vinegar, distilled | 1 tbsp | 14.9 | | | 0
apple-cider-vinegar | 02048 | Vinegar, cider | 1 tbsp | 14.9 | | | 0
tinned-tomatoes | 11531 | Tomatoes, red, ripe, canned, packed in tomato juice | 1 cup | 240 | | | 0
tomato-paste | 11546 | Tomato products, canned, paste, without salt added | 0.25 cup | 66 | | | 0
tomato-sauce | 11935 | Catsup | 1 tbsp | 17 | | | 0
honey | 19296 | Honey | 1 cup | 339 | | | 0
maple-syrup | 19353 | Syrups, maple | 1 tbsp | 20 | | | 0
molasses | 19304 | Molasses | 1 cup | 337 | | | 0
peanut-butter | 16098 | Peanut butter, smooth style, with salt | 2 tbsp | 32 | | | 0
mayonnaise | 04025 | Salad dressing, mayonnaise, regular | 1 tbsp | 13.8 | | | 0
onion | 11282 | Onions, raw | 1 cup, chopped | 160 | 1 large | 150 | 10 Stem ends, sprouts and defects
garlic | 11215 | Garlic, raw | 1 cup | 136 | 1 clove | 3 | 13 Knob and skin
leek | 11246 | Leeks, (bulb and lower leaf-portion), raw | 1 cup | 89 | 1 leek | 89 | 56 Tops, root end and skin
spring-onion | 11291 | Onions, spring or scallions (includes tops and bulb), raw | 1 cup, chopped | 100 | 1 medium (4-1/8" long) | 15 | 4 Rootlets
carrot | 11124 | Carrots, raw | 1 cup chopped | 128 | 1 large (7-1/4" to 8-/1/2" long) | 72 | 11 Crown, tops and scrapings
parsnip | 11298 | Parsnips, raw | 1 cup slices | 133 | | | 15 Parings
beetroot | 11080 | Beets, raw | 1 cup | 136 | 1 beet (2" dia) | 82 | 33 Parings and part tops
turnip | 11564 | Turnips, raw | 1 cup, cubes | 130 | 1 medium | 122 | 19 Parings
swede | 11435 | Rutabagas, raw | 1 cup, cubes | 140 | 1 medium | 386 | 15 Parings
potato | 11352 | Potato, flesh and skin, raw | 0.5 cup, diced | 75 | 1 Potato small (1-3/4" to 2-1/2" dia) | 170 | 25 Parings and trimmings
sweet-potato | 11507 | Sweet potato, raw, unprepared | 1 cup, cubes | 133 | 1 sweetpotato, 5" long | 130 | 28 Parings and trimmings
cabbage | 11109 | Cabbage, raw | 1 cup, shredded | 70 | 1 head, medium (about 5-3/4" dia) | 908 | 20 Outer leaves and core
red-cabbage | 11112 | Cabbage, red, raw | 1 cup, shredded | 70 | 1 head, medium (about 5" dia) | 839 | 20 Outer leaves and core
wombok | 11119 | Cabbage, chinese (pe-tsai), raw | 1 cup, shredded | 76 | | | 7 Outer leaves and root base
broccoli | 11090 | Broccoli, raw | 1 cup chopped | 91 | | | 39 Leaves and tough stalks with trimmings
cauliflower | 11135 | Cauliflower, raw | 1 cup chopped (1/2" pieces) | 107 | | | 61 Leaf stalks, cores and trimmings
kale | 11233 | Kale, raw | 1 cup, chopped | 67 | | | 39 Stem ends, tough stems and tough midrib parts
brussels-sprouts | 11098 | Brussels sprouts, raw | 1 cup | 88 | 1 sprout | 19 | 10 Outer leaves
spinach | 11457 | Spinach, raw | 1 cup | 30 | | | 28 Large stems and roots
silverbeet | 11147 | Chard, swiss, raw | 1 cup | 36 | | | 8 Tough stems and damaged leaves
lettuce | 11252 | Lettuce, iceberg (includes crisphead types), raw | 1 cup shredded | 72 | 1 head, medium (6" dia) | 539 | 5 Core
cos-lettuce | 11251 | Lettuce, cos or romaine, raw | 1 cup shredded | 47 | | | 6 Core
celery | 11143 | Celery, raw | 1 cup chopped | 101 | 1 stalk, medium (7-1/2" - 8" long) | 40 | 11 Roots and trimmings
fennel | 11957 | Fennel, bulb, raw | 1 cup, sliced | 87 | 1 bulb | 234 | 28 Stalk, leaves and core
asparagus | 11011 | Asparagus, raw | 1 cup | 134 | 1 spear, medium (5-1/4" to 7" long) | 16 | 47 Butt ends
kohlrabi | 11241 | Kohlrabi, raw | 1 cup | 135 | | | 54 Leaves, stems and parings
tomato | 11529 | Tomatoes, red, ripe, raw, year round average | 1 cup, chopped or sliced | 180 | 1 medium whole (2-3/5" dia) | 123 | 9 Core and stem ends
capsicum | 11821 | Peppers, sweet, red, raw | 1 cup, chopped | 149 | 1 medium (approx 2-3/4" long, 2-1/2 dia.) | 119 | 18 Stem ends, seed and core
eggplant | 11209 | Eggplant, raw | 1 cup, cubes | 82 | 1 eggplant, peeled (yield from 1-1/4 lb) | 458 | 19 Ends, parings and trimmings
okra | 11278 | Okra, raw | 1 cup | 100 | 8 pods (3" long) | 95 | 14 Crown and tips
zucchini | 11477 | Squash, summer, zucchini, includes skin, raw | 1 cup, chopped | 124 | 1 medium | 196 | 5 Ends
pumpkin | 11422 | Pumpkin, raw | 1 cup (1" cubes) | 116 | | | 30 Seeds, rind and stem
butternut-pumpkin | 11485 | Squash, winter, butternut, raw | 1 cup, cubes | 140 | | | 16 Seeds, rind and trimmings
cucumber | 11205 | Cucumber, with peel, raw | 0.5 cup slices | 52 | 1 cucumber (8-1/4") | 301 | 3 Ends
green-beans | 11052 | Beans, snap, green, raw | 1 cup 1/2" pieces | 100 | 10 beans (4" long) | 55 | 12 Ends, strings, trimmings
button-mushrooms | 11260 | Mushrooms, white, raw | 1 cup, pieces or slices | 70 | 1 medium | 18 | 3 Trimmings
corn-cob | 11167 | Corn, sweet, yellow, raw | 1 cup | 145 | | | 64 35% husk, silk, trimmings; 29% cob
frozen-peas | 11312 | Peas, green, frozen, unprepared | 1 cup | 134 | | | 0
apple | 09003 | Apples, raw, with skin | 1 cup, quartered or chopped | 125 | 1 medium (3" dia) | 182 | 10 Core and stem
banana | 09040 | Bananas, raw | 1 cup, sliced | 150 | 1 small (6" to 6-7/8" long) | 101 | 36 Skin
pear | 09252 | Pears, raw | 1 cup, slices | 140 | 1 medium | 178 | 10 Stem, core and seeds
lemon | 09150 | Lemons, raw, without peel | 1 cup, sections | 212 | 1 fruit (2-1/8" dia) | 58 | 47 45% peel, 2% seeds
lime | 09159 | Limes, raw | | | 1 fruit (2" dia) | 67 | 16 Peel and seeds
orange | 09200 | Oranges, raw, all commercial varieties | 1 cup, sections | 180 | 1 fruit (2-5/8" dia) | 131 | 27 Peel and seeds
lemon-juice | 09152 | Lemon juice, raw | 1 cup | 244 | | | 0
strawberries | 09316 | Strawberries, raw | 1 cup, halves | 152 | | | 6 Caps and stems
blueberries | 09050 | Blueberries, raw | 1 cup | 148 | | | 5 Stems and green or spoiled berries
pineapple | 09266 | Pineapple, raw, all varieties | 1 cup, chunks | 165 | 1 fruit | 905 | 49 8% core, 16% crown, 26% parings
avocado | 09037 | Avocados, raw, all commercial varieties | 1 cup, cubes | 150 | 1 avocado, NS as to Florida or California | 201 | 26 Seed and skin
peach | 09236 | Peaches, raw | 1 cup slices | 154 | 1 medium (2-2/3" dia) | 150 | 4 Pit
mango | 09176 | Mangos, raw | 1 cup pieces | 165 | 1 fruit without refuse | 336 | 29 Seeds and skin
sultanas | 09298 | Raisins, seedless | 1 cup (not packed) | 145 | | | 0
dried-apricots | 09032 | Apricots, dried, sulfured, uncooked | 1 cup, halves | 130 | | | 0
dates | 09087 | Dates, deglet noor | 1 cup, chopped | 147 | 1 date, pitted | 7.1 | 10 Pits
eggs | 01123 | Egg, whole, raw, fresh | 1 cup (4.86 large eggs) | 243 | 1 large | 50 | 12 Shell
egg-whites | 01124 | Egg, white, raw, fresh | 1 cup | 243 | 1 large | 33 | 0
egg-yolks | 01125 | Egg, yolk, raw, fresh | 1 cup | 243 | 1 large | 17 | 0
almonds | 12061 | Nuts, almonds | 1 cup, whole | 143 | 1 almond | 1.2 | 60 Shells
walnuts | 12155 | Nuts, walnuts, english | 1 cup, chopped | 117 | | | 55 Shells
pecans | 12142 | Nuts, pecans | 1 cup, chopped | 109 | | | 47 Shells
hazelnuts | 12120 | Nuts, hazelnuts or filberts | 1 cup, whole | 135 | | | 59 Shells
peanuts | 16087 | Peanuts, all types, raw | 1 cup | 146 | | | 0
sesame-seeds | 12023 | Seeds, sesame seeds, whole, dried | 1 cup | 144 | | | 0
cinnamon | 02010 | Spices, cinnamon, ground | 1 tsp | 2.6 | | | 0
paprika | 02028 | Spices, paprika | 1 tsp | 2.3 | | | 0
cumin-seeds | 02014 | Spices, cumin seed | 1 tsp, whole | 2.1 | | | 0
black-pepper | 02030 | Spices, pepper, black | 1 tsp, ground | 2.3 | | | 0
ground-ginger | 02021 | Spices, ginger, ground | 1 tsp | 1.8 | | | 0
dried-oregano | 02027 | Spices, oregano, dried | 1 tsp, leaves | 1 | | | 0
dried-thyme | 02042 | Spices, thyme, dried | 1 tsp, leaves | 1 | | | 0
nutmeg | 02025 | Spices, nutmeg, ground | 1 tsp | 2.2 | | | 0
allspice | 02001 | Spices, allspice, ground | 1 tsp | 1.9 | | | 0
ground-cloves | 02011 | Spices, cloves, ground | 1 tsp | 2.1 | | | 0
ground-bay | 02004 | Spices, bay leaf | 1 tsp, crumbled | 0.6 | | | 0
bay-leaves | 02004 | Spices, bay leaf | 1 tsp, crumbled | 0.6 | | | 0
turmeric | 02043 | Spices, turmeric, ground | 1 tsp | 3 | | | 0
chilli-powder | 02009 | Spices, chili powder | 1 tsp | 2.7 | | | 0
curry-powder | 02015 | Spices, curry powder | 1 tsp | 2 | | | 0
garlic-powder | 02020 | Spices, garlic powder | 1 tsp | 3.1 | | | 0
onion-powder | 02026 | Spices, onion powder | 1 tsp | 2.4 | | | 0
mustard-seeds | 02024 | Spices, mustard seed, ground | 1 tsp | 2 | | | 0
coriander-seeds | 02013 | Spices, coriander seed | 1 tsp | 1.8 | | | 0
cayenne | 02031 | Spices, pepper, red or cayenne | 1 tsp | 1.8 | | | 0
dried-basil | 02003 | Spices, basil, dried | 1 tsp, leaves | 0.7 | | | 0
parsley | 11297 | Parsley, fresh | 1 cup chopped | 60 | | | 5 Tough stems
basil | 02044 | Basil, fresh | 2 tbsp, chopped | 5.3 | | | 36 Tough stems, flower heads and trimmings
cooked-rice | 20045 | Rice, white, long-grain, regular, cooked, enriched | 1 cup | 158 | | | 0
gelatine | 19177 | Gelatins, dry powder, unsweetened | 1 envelope (1 tbsp) | 7 | | | 0
bacon | 10123 | Pork, cured, bacon, unprepared | | | 1 slice raw | 28 | 0
ham | 10134 | Pork, cured, ham, boneless, extra lean (approximately 5% fat), roasted | 1 cup | 140 | | | 0
tinned-tuna | 15121 | Fish, tuna, light, canned in water, drained solids | 1 cup, solid or chunks | 154 | | | 0
)";

}  // namespace samebase::tests
