/** Changes whenever any number that the model prints changes; kept with every forecast and card. */
export const MODEL_VERSION = '2.0.0'
