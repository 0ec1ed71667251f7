/** The closed lists of words a shoot file may use; apart from the schema, so that a form can offer them without it. */
export const DONENESS = ['rare', 'medium-rare', 'medium', 'medium-well', 'well-done'] as const
export const LIGHTS = ['daylight', 'golden-hour', 'golden-hour-morning', 'twilight', 'night'] as const
export const FOOD_STATES = ['raw', 'seasoned', 'cooking', 'hot', 'rested', 'sliced'] as const
