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
    took: 'least temperatures and rests for whole cuts and poultry; 40 to 140 °F as the range to hurry through',
    standing: 'stored copy',
  },
  'fda-food-code-2017': {
    reference: 'FDA Food Code (2013, 2017), 3-401.11(B) and 3-501.14',
    took: 'roast holding times, least oven temperatures in retail, 41 to 135 °F (5 to 57 °C) as the range to hurry through',
    standing: 'stored copy',
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
  'exact-series': {
    reference:
      'Carslaw, H. S. and Jaeger, J. C. (1959), Conduction of Heat in Solids: series and product solutions of the plane wall, cylinder and sphere',
    took: 'the exact solutions that the 3-D run is tested against',
    standing: 'evaluated with all terms',
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
