/**
 * Foods of the kitchen, a row each, as published for 100 g of what is eaten: USDA National Nutrient Database for Standard
 * Reference, by its number [usda-sr]. A number with "m" is the same table's, written down from memory [usda-sr-memory].
 * Columns: number; name; other names; how it is measured (l liquid, s by the spoon, w weighed); what a measure or a piece
 * weighs; kcal, protein, fat, saturated fat (g), cholesterol (mg), carbohydrate, fibre, sugars (g), sodium (mg); allergens.
 * Sugars that the table leaves out ("-") count as all carbohydrate but the fibre, which is never too few. Salt in crystals
 * has no weight by the spoon, for crystals differ; a wine's alcohol counts as poured.
 */
export const FOOD_ROWS = `
02047 | table salt | salt, fine salt | s | 18 g tbsp | 0 0 0 0 0 0 0 0 38758 |
02047 | coarse salt | sea salt, rock salt, kitchen salt, salt flakes, sea salt flakes, flaky salt, crystal salt | w | | 0 0 0 0 0 0 0 0 38758 |
02030 | black pepper | pepper, peppercorns, black peppercorns | s | 6.9 g tbsp | 251 10.39 3.26 1.392 0 63.95 25.3 0.64 20 |
02032 | white pepper | | s | 7.1 g tbsp | 296 10.4 2.12 0.626 0 68.61 26.2 - 5 |
02031 | cayenne | cayenne pepper | s | 5.3 g tbsp | 318 12.01 17.27 3.26 0 56.63 27.2 10.34 30 |
02028 | paprika | smoked paprika, sweet paprika, hot paprika | s | 6.8 g tbsp | 282 14.14 12.89 2.14 0 53.99 34.9 10.34 68 |
02020 | garlic powder | | s | 9.7 g tbsp | 331 16.55 0.73 0.249 0 72.73 9 2.43 60 |
02026 | onion powder | | s | 6.9 g tbsp | 341 10.41 1.04 0.219 0 79.12 15.2 6.63 73 |
02021 | ground ginger | ginger powder, dried ginger | s | 5.2 g tbsp | 335 8.98 4.24 2.599 0 71.62 14.1 3.39 27 |
02025 | nutmeg | ground nutmeg | s | 7 g tbsp | 525 5.84 36.31 25.94 0 49.29 20.8 2.99 16 |
02043 | turmeric | ground turmeric | s | 9.4 g tbsp | 312 9.68 3.25 1.838 0 67.14 22.7 3.21 27 |
02024 | mustard powder | ground mustard, english mustard powder, mustard seeds | s | 6.3 g tbsp | 508 26.08 36.24 1.989 0 28.09 12.2 6.79 13 | mustard
02027 | dried oregano | oregano | s | 1 g tsp | 265 9 4.28 1.551 0 68.92 42.5 4.09 25 |
02036 | dried rosemary | | s | 3.3 g tbsp | 331 4.88 15.22 7.371 0 64.06 42.6 - 50 |
02038 | dried sage | ground sage | s | 2 g tbsp | 315 10.63 12.75 7.03 0 60.73 40.3 1.71 11 |
02042 | dried thyme | | s | 2.7 g tbsp | 276 9.11 7.43 2.73 0 63.94 37 1.71 55 |
02023 | dried marjoram | marjoram | s | 1.7 g tbsp | 271 12.66 7.04 0.529 0 60.56 40.3 4.09 77 |
02063 | rosemary | | w | 1.7 g tbsp | 131 3.31 5.86 2.838 0 20.7 14.1 - 26 |
02049 | thyme | | w | 0.8 g tsp | 101 5.56 1.68 0.467 0 24.45 14 - 9 |
02065 | mint | spearmint | w | 5.7 g tbsp | 44 3.29 0.73 0.191 0 8.41 6.8 - 30 |
02044 | basil | | w | 2.65 g tbsp | 23 3.15 0.64 0.041 0 2.65 1.6 0.3 4 |
02045 | dill | dill weed | w | 8.9 g cup | 43 3.46 1.12 0.06 0 7.02 2.1 - 61 |
11297 | parsley | flat-leaf parsley | w | 60 g cup | 36 2.97 0.79 0.132 0 6.33 3.3 0.85 56 |
11215 | garlic | | w | 136 g cup, 3 g clove | 149 6.36 0.5 0.089 0 33.06 2.1 1 17 |
11216 | ginger | ginger root, root ginger | w | 2 g tsp | 80 1.82 0.75 0.203 0 17.77 2 1.7 13 |
11282 | onion | onions, red onion, red onions, yellow onion, yellow onions, white onion | w | 160 g cup, 110 g each | 40 1.1 0.1 0.042 0 9.34 1.7 4.24 4 |
11291 | spring onions | spring onion, scallions, scallion | w | 100 g cup | 32 1.83 0.19 0.032 0 7.34 2.6 2.33 16 |
11246 | leeks | leek | w | 89 g cup, 89 g each | 61 1.5 0.3 0.04 0 14.15 1.8 3.9 20 |
11260 | mushrooms | mushroom, white mushrooms, button mushrooms | w | 70 g cup | 22 3.09 0.34 0.05 0 3.26 1 1.98 5 |
11298 | parsnips | parsnip | w | 133 g cup | 75 1.2 0.3 0.05 0 17.99 4.9 4.8 10 |
11564 | turnips | turnip | w | 130 g cup | 28 0.9 0.1 0.011 0 6.43 1.8 3.8 67 |
11529 | tomatoes | tomato, cherry tomatoes | w | 180 g cup | 18 0.88 0.2 0.028 0 3.89 1.2 2.63 5 |
11546 | tomato paste | tomato purée, tomato puree | s | 262 g cup | 82 4.32 0.47 0.1 0 18.91 4.1 12.18 59 |
11124m | carrots | carrot | w | 128 g cup, 61 g each | 41 0.93 0.24 0.037 0 9.58 2.8 4.74 69 |
11143m | celery | celery sticks, celery stalks | w | 101 g cup, 40 g stick, 40 g stalk | 16 0.69 0.17 0.042 0 2.97 1.6 1.34 80 | celery
11352m | potatoes | potato, new potatoes, waxy potatoes, floury potatoes | w | 150 g cup | 77 2.05 0.09 0.025 0 17.49 2.1 0.82 6 |
11935m | ketchup | tomato ketchup | s | 17 g tbsp | 101 1.04 0.1 0.014 0 27.4 0.3 21.27 907 |
09150 | lemon | lemons, lemon without its peel | w | 58 g each | 29 1.1 0.3 0.039 0 9.32 2.8 2.5 2 |
09152 | lemon juice | juice of lemons | l | 244 g cup | 22 0.35 0.24 0.04 0 6.9 0.3 2.52 1 |
09156 | lemon zest | lemon peel | s | 6 g tbsp | 47 1.5 0.3 0.039 0 16 10.6 4.17 6 |
09160 | lime juice | | l | 242 g cup | 25 0.42 0.07 0.008 0 8.42 0.4 1.69 2 |
09206 | orange juice | | l | 248 g cup | 45 0.7 0.2 0.024 0 10.4 0.2 8.4 1 |
09216 | orange zest | orange peel | s | 6 g tbsp | 97 1.5 0.2 0.024 0 25 10.6 - 3 |
04053 | olive oil | | l | 216 g cup | 884 0 100 13.808 0 0 0 0 2 |
04582 | rapeseed oil | canola oil | l | 218 g cup | 884 0 100 7.365 0 0 0 0 0 |
04060 | sunflower oil | | l | 218 g cup | 884 0 100 10.1 0 0 0 0 0 |
04058 | sesame oil | | l | 218 g cup | 884 0 100 14.2 0 0 0 0 0 | sesame
04042 | peanut oil | groundnut oil | l | 216 g cup | 884 0 100 16.9 0 0 0 0 0 | peanuts
04001 | beef dripping | dripping, beef fat, tallow | s | 205 g cup | 902 0 100 49.8 109 0 0 0 0 |
04002 | lard | | s | 205 g cup | 902 0 100 39.2 95 0 0 0 0 |
04574 | duck fat | | s | 205 g cup | 882 0 99.8 33.2 100 0 0 0 0 |
04576 | goose fat | | s | 205 g cup | 900 0 99.8 27.7 100 0 0 0 0 |
01001 | butter | salted butter | s | 14.2 g tbsp | 717 0.85 81.11 51.368 215 0.06 0 0.06 643 | milk
01145m | unsalted butter | sweet butter | s | 14.2 g tbsp | 717 0.85 81.11 50.489 215 0.06 0 0.06 11 | milk
01053 | heavy cream | whipping cream, heavy whipping cream | l | 238 g cup | 340 2.84 36.08 23.032 113 2.74 0 2.92 27 | milk
01056 | sour cream | soured cream | s | 230 g cup | 198 2.44 19.35 10.14 59 4.63 0 3.41 31 | milk
01077 | milk | whole milk | l | 244 g cup | 61 3.15 3.25 1.865 10 4.8 0 5.05 43 | milk
01088 | buttermilk | | l | 245 g cup | 40 3.31 0.88 0.548 4 4.79 0 4.79 190 | milk
01116 | yoghurt | yogurt, natural yoghurt, plain yogurt, whole-milk yoghurt | s | 245 g cup | 61 3.47 3.25 2.096 13 4.66 0 4.66 46 | milk
01032 | parmesan | parmesan cheese | s | 100 g cup | 420 28.42 27.84 15.371 86 13.91 0 0.07 1804 | milk
01123m | egg | eggs, hen’s eggs | w | 50 g each | 143 12.56 9.51 3.126 372 0.72 0 0.37 142 | eggs
04025 | mayonnaise | | s | 220 g cup | 680 0.96 74.85 11.703 42 0.57 0 0.57 635 | eggs
02046 | mustard | yellow mustard, prepared mustard | s | 249 g cup | 60 3.74 3.34 0.214 0 5.83 4 0.92 1104 | mustard
| dijon mustard | wholegrain mustard, english mustard, german mustard | s | 249 g cup | | mustard, sulphites
02048 | cider vinegar | apple cider vinegar, apple vinegar | l | 239 g cup | 21 0 0 0 0 0.93 0 0.4 5 |
02053 | white vinegar | distilled vinegar, spirit vinegar | l | 238 g cup | 18 0 0 0 0 0.04 0 0.04 2 |
02068 | red wine vinegar | wine vinegar | l | 239 g cup | 19 0.04 0 0 0 0.27 0 0 8 | sulphites
02069 | balsamic vinegar | | l | 255 g cup | 88 0.49 0 0 0 17.03 0 14.95 23 | sulphites
| malt vinegar | | l | 239 g cup | | gluten
19335 | sugar | white sugar, caster sugar, granulated sugar | s | 4.2 g tsp | 387 0 0 0 0 99.98 0 99.8 1 |
19334 | brown sugar | light brown sugar, dark brown sugar, muscovado sugar | s | 220 g cup | 380 0.12 0 0 0 98.09 0 97.02 28 |
19296 | honey | | s | 339 g cup | 304 0.3 0 0 0 82.4 0.2 82.12 4 |
19304 | molasses | black treacle, treacle | s | 337 g cup | 290 0 0.1 0.018 0 74.73 0 74.72 37 |
19353 | maple syrup | | l | 20 g tbsp | 260 0.04 0.06 0.007 0 67.04 0 60.46 12 |
16123 | soy sauce | shoyu | l | 16 g tbsp | 53 8.14 0.57 0.073 0 4.93 0.8 0.4 5493 | soybeans, wheat
16124 | tamari | | l | 18 g tbsp | 60 10.51 0.1 0.011 0 5.57 0.8 1.7 5586 | soybeans
16112 | miso | miso paste | s | 275 g cup | 198 12.79 6.01 1.025 0 25.37 5.4 6.2 3728 | soybeans
12166 | tahini | sesame paste | s | 15 g tbsp | 595 17 53.76 7.529 0 21.19 9.3 0.49 115 | sesame
02054 | capers | | s | 8.6 g tbsp | 23 2.36 0.86 0.233 0 4.89 3.2 0.41 2348 |
02055 | horseradish | prepared horseradish | s | 15 g tbsp | 48 1.18 0.69 0.09 0 11.29 3.3 7.99 420 |
15002m | anchovies | anchovy, anchovy fillets, anchovies in oil | w | 4 g each, 4 g fillet | 210 28.89 9.71 2.203 85 0 0 0 3668 | fish
06971m | worcestershire sauce | worcester sauce | l | 17 g tbsp | 78 0 0 0 0 19.46 0 10.03 980 | fish, gluten
20081m | flour | plain flour, wheat flour, white flour, all-purpose flour | s | 125 g cup | 364 10.33 0.98 0.155 0 76.31 2.7 0.27 2 | wheat
20027m | cornflour | cornstarch, corn starch | s | 128 g cup | 381 0.26 0.05 0.009 0 91.27 0.9 0 9 |
14096m | red wine | dry red wine | l | 235 g cup | 85 0.07 0 0 0 2.61 0 0.62 4 | sulphites
14106m | white wine | dry white wine | l | 235 g cup | 82 0.07 0 0 0 2.6 0 0.96 5 | sulphites
14003m | beer | lager, ale | l | 237 g cup | 43 0.46 0 0 0 3.55 0 0 4 | gluten
| water | | l | 236.6 g cup | 0 0 0 0 0 0 0 0 0 |
`
