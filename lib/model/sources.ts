/**
 * The register of publications: id to full reference and what was taken from it.
 * Constants name their source by these ids; tests/reference/sources.test.ts checks that each id is known and each entry used.
 * `standing` says how far to trust the copy: 'stored copy' was read in a stored copy of the publication, 'from memory' was not.
 */
export const SOURCES = {
  'choi-okos-1986': {
    reference:
      'Choi, Y. and Okos, M. R. (1986), Effects of temperature and composition on the thermal properties of foods, in Food Engineering and Process Applications vol. 1, pp. 93-101',
    took: 'conductivity, density and heat capacity of water, protein, fat, carbohydrate and ash against temperature, and the mixing rules',
    standing: 'stored copy',
  },
  'ashrae-2006-ch9': {
    reference: 'ASHRAE Handbook, Refrigeration (2006), chapter 9, Thermal Properties of Foods, table 3',
    took: 'composition of meats by mass, and the tabulated heat capacities that the properties are tested against',
    standing: 'from memory, cross-checked with stored copies',
  },
  'fsis-appendix-a-1999': {
    reference:
      'USDA FSIS, Appendix A: Compliance Guidelines for Meeting Lethality Performance Standards (1999), table for cooked beef, roast beef and corned beef',
    took: 'dwell times at 130 to 160 °F for 6.5 log of Salmonella; D and z that reproduce them',
    standing: 'stored copy',
  },
  'fsis-safe-minimum': {
    reference: 'USDA FSIS, Safe Minimum Internal Temperature Chart; FSIS, Beef From Farm to Table (2024-12-04)',
    took: 'least temperatures and rests for whole cuts, poultry and fish; that food is not left out for more than 2 h, or 1 h above 90 °F',
    standing: 'stored copy; fish from pages that quote it',
  },
  'fsis-tenderised-2016': {
    reference:
      'USDA FSIS, Descriptive Designation for Needle- or Blade-Tenderized Beef Products (final rule, 2015), and its advice to consumers of May 2016',
    took: 'that pierced beef is cooked to 145 °F and rests 3 min as whole cuts are, because germs may be inside',
    standing: 'stored copy of the rule; the advice from a page that quotes it',
  },
  'fsis-game-2011': {
    reference: 'USDA FSIS, Game from Farm to Table (revised May 2011)',
    took: '160 °F for cuts of game',
    standing: 'from a stored page that quotes it',
  },
  'fsis-oven-325': {
    reference: 'USDA FSIS, How Temperatures Affect Food (2020-10-19)',
    took: 'to roast meat and poultry in an oven no cooler than 325 °F',
    standing: 'stored copy of its summary',
  },
  'fsis-appendix-a-2021': {
    reference: 'USDA FSIS, Cooking Guideline for Meat and Poultry Products (Revised Appendix A), December 2021',
    took: 'that warming up from 50 to 130 °F takes no more than 6 h',
    standing: 'from memory; that the guideline limits warming up is from a stored copy of its notice',
  },
  'fsis-appendix-b-1999': {
    reference:
      'USDA FSIS, Appendix B: Compliance Guidelines for Cooling Heat-Treated Meat and Poultry Products (Stabilization), 1999',
    took: '130 to 80 °F in 1.5 h and on to 40 °F in 5 h; or 120 to 55 °F in 6 h, of which 120 to 80 °F in 1 h',
    standing: 'stored copies of a university page and of a letter that quote it',
  },
  'fda-food-code-2017': {
    reference: 'FDA Food Code (2013, 2017), 3-401.11(A) and (B), 3-501.14 and 3-501.16',
    took: 'least temperatures by kind of meat, roast holding times, least oven temperatures in retail, two-step cooling, hot holding at 135 °F (roasts cooked by its table: 130 °F), 41 to 135 °F (5 to 57 °C) as the range to hurry through',
    standing: 'stored copies of states that print it',
  },
  'uk-fsa-cooking': {
    reference: 'UK Food Standards Agency, advice to caterers on cooking (70 °C for 2 min or the same; rolled joints)',
    took: 'the five temperatures and times for meat cooked throughout; that rolled joints are not served rare',
    standing: 'stored copies of pages that quote it',
  },
  'mmb-9048': {
    reference: 'Meat and Muscle Biology, abstract 9048 (University of Wisconsin-Madison)',
    took: 'that the Appendix A times were confirmed at 60.0, 65.6 and 71.1 °C and not at 54.4 °C',
    standing: 'stored copy',
  },
  'amsa-photo-guide': {
    reference: 'American Meat Science Association scale and USDA beef steak colour guide (peak temperatures)',
    took: 'the highest of the doneness scales',
    standing: 'three rows from a stored copy, the rest from memory',
  },
  'fsis-consumer-doneness': {
    reference: 'USDA FSIS, Doneness Versus Safety (2024-07-10)',
    took: 'medium-rare 145 °F, medium 160 °F, well done 170 °F',
    standing: 'stored copy',
  },
  'culinary-school-doneness': {
    reference:
      'Two culinary school textbooks and a trade question-and-answer site, in stored copies; final temperatures',
    took: 'the lower doneness scales, as cooks use the words',
    standing: 'stored copy',
  },
  'baldwin-roasting': {
    reference: 'Baldwin, D., a page on roasting by an applied mathematician',
    took: 'rare 50, medium-rare 55, medium 60, well done 70 °C',
    standing: 'stored copy',
  },
  'lowe-1930s': {
    reference: 'Lowe, B., Experimental Cookery (1930s)',
    took: 'thickness of a standing rib (4 to 4.5 in); cooking losses and rise of five roasts',
    standing: 'stored copy',
  },
  'pork-loin-2016': {
    reference: 'Journal of Animal Science 94 (2016) 11, 4903, tables 1 and 2: 1,234 pork carcasses',
    took: 'loin depth 67 mm with a coefficient of variation of 10.8 %, its correlation of 0.47 with the weight of the loin: how much unmeasured loins differ',
    standing: 'tables of a stored copy',
  },
  'lamb-yield-1997': {
    reference:
      'Lorenzen, C. L. et al. (1997), Influence of wholesale lamb marketing options and merchandising styles on retail yield and fabrication time, Journal of Animal Science 75 (1), 1-6',
    took: 'retail yield of legs 85.3 % with and 68.0 % without bone: a fifth of a leg is bone and what goes with it',
    standing: 'abstract in a stored copy',
  },
  'bone-cancellous-1970s': {
    reference: 'Thermal properties of cancellous bone (beef), abstract; 0.0007 cal/cm s °C and 0.73 cal/cm³ °C',
    took: 'k 0.29 W/mK and 3.05 MJ/m³K of spongy beef bone: one end of the range that the bone runs are made at',
    standing: 'abstract in a stored copy, which names no authors',
  },
  'bone-cortical-2018': {
    reference:
      'Lee, J., Huh, S. J. and Lee, H. J. (2018), Experimental determination of thermal conductivity of cortical bone by compensating heat loss in parallel plate method, doi 10.1007/s12541-018-0069-0',
    took: 'k 0.55 ± 0.02 W/mK of compact beef bone: the other end',
    standing: 'abstract in a stored copy',
  },
  'own-fit': {
    reference: 'Our own fit of the model to ten calibration rows of the roasting timetables (role calibration)',
    took: 'the share of a whole bird that warms as one solid',
    standing: 'fitted; those rows are left out of every score',
  },
  'own-trial': {
    reference: 'Our own trial of the skin laws on the open roasting timetables (calibration rows)',
    took: 'centres and spreads of the skin law, of conductivity, and of the juice that shrinking meat lets go',
    standing: 'fitted; the rows fitted to are left out of every score',
  },
  'geileskey-1998': {
    reference:
      'Geileskey, A., King, R. D., Corte, D., Pinto, P. and Ledward, D. A. (1998), The kinetics of cooked meat haemoprotein formation in meat and model systems, Meat Science 48, 189-199',
    took: 'first-order denaturation of myoglobin: k0, activation energy, and the shares denatured in rare and well-done meat',
    standing: 'values from a stored copy of a thesis that quotes them; title from memory',
  },
  'verwer-1999': {
    reference:
      'Verwer, J. G., Spee, E. J., Blom, J. G. and Hundsdorfer, W. (1999), A second-order Rosenbrock method applied to photochemical dispersion problems, SIAM J. Sci. Comput. 20, 1456-1480',
    took: 'the ROS2 time step',
    standing: 'from memory; its order is tested against the exact series',
  },
  'antoine-water': {
    reference:
      "Antoine's equation for water, 1 to 100 °C, with the constants of the common vapour-liquid data collections",
    took: 'saturation pressure and boiling point',
    standing: 'from memory; boils at 100.0 °C under 101.325 kPa',
  },
  'standard-atmosphere': {
    reference: 'International Standard Atmosphere (ISO 2533:1975), troposphere',
    took: 'air pressure at an altitude',
    standing: 'from memory',
  },
  'water-holding-2007': {
    reference:
      'van der Sman, R. G. M. (2007), Moisture transport during cooking of meat, Meat Science 76; used again by Feyissa et al. (2013) for roasting',
    took: 'water that meat holds in the end against temperature',
    standing: 'constants from a stored copy, form from memory',
  },
  'fat-melting-2011': {
    reference:
      'Lehrbuch Lebensmittelchemie und Ernährung, 2nd edition (Springer, 2011), table of melting points of fats',
    took: 'melting ranges of animal fats',
    standing: 'as quoted in a stored page; the heat of melting is from memory',
  },
  'exact-series': {
    reference:
      'Carslaw, H. S. and Jaeger, J. C. (1959), Conduction of Heat in Solids: series and product solutions of the plane wall, cylinder and sphere',
    took: 'the exact solutions that the 3-D run is tested against',
    standing: 'evaluated with all terms',
  },
  'rfc-5545': {
    reference: 'RFC 5545 (2009), Internet Calendaring and Scheduling Core Object Specification (iCalendar)',
    took: 'the form of the calendar feed: lines of 75 octets, escaping, UTC times, SEQUENCE, STATUS, VALARM',
    standing: 'from memory; the feed is read back by a strict parser',
  },
  'rfc-7986': {
    reference: 'RFC 7986 (2016), New Properties for iCalendar, 5.1 and 5.7',
    took: 'NAME and REFRESH-INTERVAL of the calendar feed',
    standing: 'from memory',
  },
  'fsis-big-thaw': {
    reference: 'USDA FSIS, The Big Thaw; the thaw table for turkeys of foodsafety.gov',
    took: 'days in the refrigerator and hours in cold water by mass; 24 h for each 4 to 5 lb, 30 min for each lb; that frozen meat takes about 50 % longer to cook',
    standing: 'stored copy',
  },
  'ipcc-2006': {
    reference: 'IPCC (2006), Guidelines for National Greenhouse Gas Inventories, volume 2, chapter 1, table 1.2',
    took: 'net calorific values: charcoal 29.5 MJ/kg, wood 15.6 MJ/kg',
    standing: 'from memory',
  },
  'iso-17225': {
    reference: 'ISO 17225-2, Solid biofuels: graded wood pellets, class A1',
    took: 'the least net calorific value of a wood pellet as received, 16.5 MJ/kg',
    standing: 'from memory',
  },
  'baldwin-2012': {
    reference:
      'Baldwin, D. E. (2012), Sous vide cooking: a review, International Journal of Gastronomy and Food Science 1, 15-30',
    took: 'heat transfer from a stirred water bath to bagged meat, 95 W/m²K',
    standing: 'from memory',
  },
  'usda-sr': {
    reference: 'USDA National Nutrient Database for Standard Reference, release 28 (2015), abbreviated file',
    took: 'composition of foods and of cuts raw and roasted, and what a cup, a spoon or a piece of each weighs',
    standing: 'rows of a stored copy; the lamb rows agree with two other stored copies',
  },
  'usda-sr-memory': {
    reference: 'The same table, rows marked "m"',
    took: 'composition and weights of some foods and cuts',
    standing: 'from memory',
  },
  'atwater-usda': {
    reference: 'Merrill, A. L. and Watt, B. K. (1973), Energy Value of Foods, USDA Agriculture Handbook 74',
    took: '4.27 kcal in a gram of the protein of meat, 9.02 in one of its fat',
    standing: 'from memory; they give back every complete row of the tables to 1 kcal',
  },
  'cfr-101-9': {
    reference: 'United States, 21 CFR 101.9(c), nutrition labelling of food',
    took: 'to what each nutrient of a serving is rounded',
    standing: 'stored copy of the rules and of worked values',
  },
  'nist-hb44': {
    reference: 'NIST Handbook 44, appendix C, general tables of units of measurement',
    took: 'US customary cup, tablespoon, teaspoon and fluid ounce: parts of a gallon of 231 cubic inches',
    standing: 'from memory',
  },
  'eu-1169-2011': {
    reference: 'Regulation (EU) No 1169/2011 on the provision of food information to consumers, annex II',
    took: 'the 14 substances that must be named',
    standing: 'from memory',
  },
  'us-falcpa-2004': {
    reference: 'United States, Food Allergen Labeling and Consumer Protection Act of 2004',
    took: 'eight of the nine major food allergens',
    standing: 'from memory',
  },
  'us-faster-2021': {
    reference: 'United States, FASTER Act of 2021',
    took: 'sesame, the ninth',
    standing: 'from memory',
  },
  'gas-mark': {
    reference: 'The usual conversion of the marks of British gas ovens, as oven makers and cookery books print it',
    took: '275 °F at mark 1, 25 °F more for each mark, 225 and 250 °F at a quarter and a half',
    standing: 'stored copies of three tables, which agree in °F',
  },
  'fsis-leftovers': {
    reference: 'USDA FSIS, Leftovers and Food Safety',
    took: 'shallow containers; 3 to 4 days in the refrigerator, 3 to 4 months frozen; reheating to 165 °F',
    standing: '165 °F from a stored copy of its chart, the rest from memory',
  },
  estimate: {
    reference: 'Estimate, from memory of trade cutting sizes and carcass anatomy; not measured',
    took: 'sizes of cuts, bone shares, compositions that no table we hold gives',
    standing: 'from memory',
  },
} as const satisfies Record<string, Source>

export interface Source {
  readonly reference: string
  readonly took: string
  readonly standing: string
}
export type SourceId = keyof typeof SOURCES
