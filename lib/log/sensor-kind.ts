/** "core", "cooker" or "air" of "core-2"; apart from the schemas, so that a keypad need not load them. */
export const sensorKind = (name: string) => name.replace(/-\d$/, '') as 'core' | 'cooker' | 'air'
