/** Texts of the Day page. */

export const theDayOf = (title: string) => `The day: ${title}`
