// Published stand-ins, restated with their amounts from university extension services and cookery textbooks (all seen
// in a copy of the source), each with what it means in our terms.
#pragma once

namespace samebase::tests {

/// Row | as published | role, or any | our ingredient and how much of it | ways to do its work, each a sum of
/// ingredients and how much of them | remark. An amount is one measure, or the least and the most that it may weigh;
/// "?" where none is published. The measures are United States ones. Where the base is inferred, a page heading was not
/// seen.
inline constexpr const char* published_stand_ins = R"(
@ Utah State University Extension, Ingredient Substitutions
1 | 1 tsp allspice: 0.5 tsp cinnamon + 0.5 tsp ground cloves | any | allspice 1 tsp | cinnamon 0.5 tsp + ground-cloves 0.5 tsp
2 | 1 tsp apple pie spice: 0.5 tsp cinnamon + 0.5 tsp nutmeg + 0.125 tsp cardamom | any | apple-spice-mix 1.7 g..2.4 g | cinnamon 0.5 tsp + nutmeg 0.5 tsp + cardamom 0.125 tsp | a teaspoon of ready-mixed pie spice is 1.7 g (SR26), of its own parts 2.4 g
3 | 1 tsp baking powder: 0.25 tsp baking soda + 0.625 tsp cream of tartar | any | baking-powder 1 tsp | baking-soda 0.25 tsp + cream-of-tartar 0.625 tsp
4 | 1 tsp baking powder: 0.25 tsp baking soda + 0.5 cup sour milk or buttermilk or yogurt (reduce recipe liquid by 0.5 cup) | binder | baking-powder 1 tsp | baking-soda 0.25 tsp + buttermilk 0.5 cup or baking-soda 0.25 tsp + plain-yoghurt 0.5 cup
5 | 1 tsp baking soda: 1.5 tsp baking powder per cup of flour (per-cup-of-flour rule; conflicts with row 52) | any | baking-soda 1 tsp | baking-powder 1.5 tsp
6 | 1 cup biscuit mix: 1 cup flour + 1.5 tsp baking powder + 0.25 tsp salt + 2 tbsp shortening | any | scone-mix 120 g..145 g | plain-flour 1 cup + baking-powder 1.5 tsp + salt 0.25 tsp + vegetable-shortening 2 tbsp | a cup of mix is 120 g (SR26) to 145 g (its parts less the air)
7 | 1 cup buttermilk: 1 tbsp lemon juice or vinegar + 15 tbsp milk | any | buttermilk 1 cup | milk 15 tbsp + lemon-juice 1 tbsp or milk 15 tbsp + white-vinegar 1 tbsp
8 | 1 cup buttermilk: 1 cup plain yogurt | any | buttermilk 1 cup | plain-yoghurt 1 cup
9 | 1 cup cake flour: 0.875 cup all-purpose flour + 2 tbsp cornstarch (sift together) | any | cake-flour 114 g..137 g | plain-flour 0.875 cup + cornflour 2 tbsp | a cup of cake flour is 114 g (sifted) to 137 g (dipped, SR26)
10 | 1 oz unsweetened baking chocolate: 3 tbsp cocoa powder + 1 tbsp shortening or butter or margarine | any | cooking-chocolate 1 oz | cocoa-powder 3 tbsp + vegetable-shortening 1 tbsp or cocoa-powder 3 tbsp + butter 1 tbsp or cocoa-powder 3 tbsp + margarine 1 tbsp
11 | 6 oz semisweet chocolate pieces: 2 oz unsweetened chocolate + 2 tbsp shortening + 0.5 cup sugar (source says 2 squares (1 oz each)) | any | dark-chocolate 6 oz | cooking-chocolate 2 oz + vegetable-shortening 2 tbsp + white-sugar 0.5 cup
12 | 0.25 cup cocoa powder: 1 oz baking chocolate (reduce recipe fat by 0.5 tbsp) | any | cocoa-powder 0.25 cup | cooking-chocolate 1 oz
13 | 1 cup corn syrup: 1 cup granulated sugar + 0.25 cup water | any | corn-syrup 1 cup | white-sugar 1 cup | the water is in the note
14 | 1 tbsp cornstarch: 2 tbsp granular tapioca | any | cornflour 1 tbsp | granular-tapioca 2 tbsp
15 | 1 tbsp cornstarch: 2 tbsp flour | sauce | cornflour 1 tbsp | plain-flour 2 tbsp
16 | 1 whole egg: 2.5 tbsp dry whole egg + 2.5 tbsp water | any | eggs 1 | dried-egg 12.5 g..2.5 tbsp | a tablespoon of dried egg is 5 g in SR26 (NDB 01133); the water is in the note
17 | 1 whole egg: 1 heaping tbsp ground flaxseed + 0.25 cup water (blend 2-3 min) | binder | eggs 1 | ground-flaxseed 7 g..10 g | a heaping tablespoon; the water is in the note
18 | 1 whole egg: 1 tsp unflavored gelatin + 3 tbsp cold water + 7 tsp boiling water (source: 2 tbsp + 1 tsp boiling water) | starch | eggs 1 | gelatine 1 tsp | the water is in the note
19 | 1 clove garlic clove: 0.125-0.25 tsp garlic powder | any | garlic 3 g..5 g | garlic-powder 0.125 tsp..0.25 tsp | a clove is 3 g (SR26) to 5 g (ours)
20 | 1 clove garlic clove: 0.25 tsp instant dry garlic | any | garlic 3 g..5 g | dried-garlic-flakes 0.4 g..0.75 g | a clove as above; a teaspoon of flakes is 1.6 to 3 g
21 | 1 cup honey: 1.25 cup sugar + 0.25 cup liquid (milk or water or juice) | any | honey 1 cup | white-sugar 1.25 cup | the liquid is in the note
22 | 1 tsp italian seasoning: 0.25 tsp basil + 0.25 tsp oregano + 0.25 tsp rosemary + 0.25 tsp thyme | any | dried-mixed-herbs 1 tsp | dried-basil 0.25 tsp + dried-oregano 0.25 tsp + dried-rosemary 0.25 tsp + dried-thyme 0.25 tsp
@ North Dakota State University Extension, Kitchen Detours (2020)
23 | 1 cup butter: 0.875 cup oil | any | butter 1 cup | vegetable-oil 0.875 cup
24 | 1 cup butter: 1 cup margarine | any | butter 1 cup | margarine 1 cup
25 | 1 cup butter: 0.875 cup vegetable shortening (add water as package says) | any | butter 1 cup | vegetable-shortening 0.875 cup
26 | 1 cup chicken or beef stock: 1 cup water + 1 tbsp stock base | any | chicken-stock 1 cup | stock-powder 7.8 g..12 g | a tablespoon of granules is 7.8 g (SR26), of powder up to 12 g; the water is in the note
26 | 1 cup chicken or beef stock: 1 cup water + 1 tbsp stock base | any | beef-stock 1 cup | stock-powder 7.8 g..12 g | as above
27 | 1 tbsp cornstarch: 2 tbsp all-purpose flour (thickening) | sauce | cornflour 1 tbsp | plain-flour 2 tbsp
28 | 1 tsp baking powder: 0.333 tsp baking soda + 0.5 tsp cream of tartar | any | baking-powder 1 tsp | baking-soda 0.333 tsp + cream-of-tartar 0.5 tsp
29 | 1 cup cake flour: 0.875 cup all-purpose flour (source: 1 cup minus 2 tbsp) | any | cake-flour 114 g..137 g | plain-flour 0.875 cup | as row 9
30 | 1 cup buttermilk: 15 tbsp milk + 1 tbsp lemon juice or vinegar (stand 10 min) | any | buttermilk 1 cup | milk 15 tbsp + lemon-juice 1 tbsp or milk 15 tbsp + white-vinegar 1 tbsp
31 | 1 cup brown sugar (packed): 1 cup granulated sugar + 0.25 cup molasses | any | brown-sugar 1 cup | white-sugar 1 cup + molasses 0.25 cup
32 | 1 cup mayonnaise: 1 cup sour cream (salads only) | sauce | mayonnaise 1 cup | sour-cream 1 cup
33 | 1 cup mayonnaise: 1 cup plain yogurt (salads only) | sauce | mayonnaise 1 cup | plain-yoghurt 1 cup
34 | 1 cup mayonnaise: 1 cup cottage cheese pureed (salads only) | topping | mayonnaise 1 cup | cottage-cheese 1 cup
@ North Dakota State University, FN198, Ingredient Substitutions (2013), first part
35 | 1 tsp allspice: 0.5 tsp cinnamon + 0.5 tsp ground cloves | any | allspice 1 tsp | cinnamon 0.5 tsp + ground-cloves 0.5 tsp
36 | 1 tsp apple pie spice: 0.5 tsp cinnamon + 0.25 tsp nutmeg + 0.125 tsp cardamom | any | apple-spice-mix 1.7 g..2.4 g | cinnamon 0.5 tsp + nutmeg 0.25 tsp + cardamom 0.125 tsp | as row 2
37 | 1 tsp arrowroot starch: 1 tbsp flour | sauce | arrowroot 1 tsp | plain-flour 1 tbsp
38 | 1 tsp arrowroot starch: 1.5 tsp cornstarch | any | arrowroot 1 tsp | cornflour 1.5 tsp
39 | 1 tsp baking powder: 0.25 tsp baking soda + 0.625 tsp cream of tartar | any | baking-powder 1 tsp | baking-soda 0.25 tsp + cream-of-tartar 0.625 tsp
40 | 1 tsp baking powder: 0.25 tsp baking soda + 0.5 cup sour milk or buttermilk or yogurt (reduce liquid by 0.5 cup) | binder | baking-powder 1 tsp | baking-soda 0.25 tsp + buttermilk 0.5 cup or baking-soda 0.25 tsp + plain-yoghurt 0.5 cup
41 | 1 tsp baking powder: 0.25 tsp baking soda + 0.5 tbsp vinegar or lemon juice + sweet milk to make 0.5 cup (reduce liquid by 0.5 cup) | starch | baking-powder 1 tsp | baking-soda 0.25 tsp + milk 7.5 tbsp + lemon-juice 0.5 tbsp or baking-soda 0.25 tsp + milk 7.5 tbsp + white-vinegar 0.5 tbsp
42 | 1 tsp baking powder: 0.25 tsp baking soda + 0.25-0.5 cup molasses (reduce liquid by 1-2 tbsp) | seasoning | baking-powder 1 tsp | baking-soda 0.25 tsp + molasses 0.25 cup..0.5 cup
43 | 1 tsp baking powder: 0.333 tsp baking soda + 0.5 tsp cream of tartar | any | baking-powder 1 tsp | baking-soda 0.333 tsp + cream-of-tartar 0.5 tsp
44 | 1 whole bay leaf: 0.25 tsp cracked bay leaves | any | bay-leaves 0.2 g..0.6 g | ground-bay 0.25 tsp | a leaf is 0.2 to 0.6 g
@ University of Wisconsin Extension, Modifying Recipes (2011)
69 | 1 whole egg: 2 egg whites (lower fat) | main | eggs 1 | egg-whites 2
70 | 1 cup butter: 1 cup stick margarine | any | butter 1 cup | margarine 1 cup
71 | 1 cup butter: 0.75 cup oil | any | butter 1 cup | vegetable-oil 0.75 cup
72 | 1 cup shortening: 1 cup stick margarine | any | vegetable-shortening 1 cup | margarine 1 cup
73 | 1 cup shortening: 0.75 cup oil | any | vegetable-shortening 1 cup | vegetable-oil 0.75 cup
74 | 1 cup light cream: 1 cup evaporated skim milk | any | light-cream 1 cup | evaporated-milk 1 cup
75 | 1 cup sour cream: 1 cup plain nonfat or low-fat yogurt | any | sour-cream 1 cup | plain-yoghurt 1 cup
76 | 1 cup sour cream: 1 cup light sour cream | any | sour-cream 1 cup | light-sour-cream 1 cup
77 | 8 oz cream cheese: 1 cup ricotta blended smooth | any | cream-cheese 8 oz | ricotta 1 cup
78 | 8 oz cream cheese: 1 cup low-fat cottage cheese blended smooth | any | cream-cheese 8 oz | cottage-cheese 1 cup
79 | 1 oz unsweetened baking chocolate: 3 tbsp cocoa powder + 1 tbsp oil | any | cooking-chocolate 1 oz | cocoa-powder 3 tbsp + vegetable-oil 1 tbsp
@ C. C. Greer, School and Home Cooking
85 | 1 cup wheat flour: 1.125 cup barley flour (base (1 cup wheat flour) inferred: page heading not seen; conflicts with row 84) | starch | plain-flour 1 cup | barley-flour 1.125 cup
86 | 1 cup wheat flour: 0.833 cup buckwheat flour (base inferred) | starch | plain-flour 1 cup | buckwheat-flour 0.833 cup
87 | 1 cup wheat flour: 1.167 cup fine cornmeal (base inferred; conflicts with row 67) | topping | plain-flour 1 cup | maize-flour 1.167 cup..142 g | fine meal is 122 g a cup in SR26 (NDB 20020), the flour 117 g
88 | 1 cup wheat flour: scant 1 cup peanut flour (base inferred) | topping | plain-flour 1 cup | peanut-flour 0.9 cup..1 cup | a scant cup
89 | 1 cup wheat flour: 0.875 cup rice flour (base inferred; agrees with row 66) | sauce | plain-flour 1 cup | rice-flour 0.875 cup
90 | 1 cup wheat flour: 1.5 cup rolled oats (base inferred) | topping | plain-flour 1 cup | rolled-oats 1.5 cup
91 | 1 cup wheat flour: 1.125 cup ground rolled oats (base inferred) | binder | plain-flour 1 cup | oat-flour 1.125 cup
92 | 1 cup wheat flour: 0.875 cup soy-bean flour (base inferred) | binder | plain-flour 1 cup | soy-flour 0.875 cup
93 | 1 cup wheat flour: 0.75 cup potato flour (base inferred; conflicts with row 68) | sauce | plain-flour 1 cup | potato-flour 0.75 cup
94 | 1 cup wheat flour: 1 cup rye flour (base inferred) | starch | plain-flour 1 cup | rye-flour 1 cup
@ F. M. Farmer, The Boston Cooking-School Cook Book
96 | any  soda + cream of tartar: baking powder = 2 x the cream of tartar given (leavening rule) | any | cream-of-tartar 1 tsp | baking-powder 2 tsp | the soda is left out, as the note says
97 | 1 part macaroni: 1 part spaghetti or other Italian pasta (soup) | any | macaroni 100 g | penne 100 g or shells 100 g or spirals 100 g or spaghetti 100 g | any pasta
98 | 1 part cream: 1 part rich milk (frozen cream) | sauce | cream 1 cup | light-cream 1 cup or milk ? + butter ? | rich milk is light cream, or milk with butter in it
99 | any  nutmeg: cinnamon (apple pie) | any | nutmeg 1 tsp | cinnamon 1 tsp | no amount published: spoon for spoon
100 | any  fresh apple: evaporated apples soaked overnight (pie) | any | apple 100 g | dried-apple ? | no amount published
101 | 3 cup scalded milk: 1 can evaporated cream or condensed milk + 2 cup boiling water (omit sugar if sweetened) | any | milk 3 cup | evaporated-milk 252 g..369 g | a can, small or large; the water is in the note
102 | 1 cup hominy (cooked): 1 cup hot boiled rice (raised muffins; also add 2 egg whites) | starch | hominy 1 cup | cooked-rice 1 cup
103 | 1 part cooked chicken: 1 part cold cooked lamb (pilaf) | main | cold-roast-chicken 100 g | cold-roast-lamb 100 g
)";

}  // namespace samebase::tests
