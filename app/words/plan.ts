/** Texts of the Plan page. */

export const shotsWent = (n: number) => `${n === 1 ? 'One shot' : `${n} shots`} went with the moment to be caught.`
