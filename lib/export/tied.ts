const NBSP = '\u00a0'

/** A number and its unit stay together on paper: no line ends between "58" and "°C", "2 h" and "20", "63 °C" and "/ 145 °F". */
export const tied = (text: string): string =>
  text
    .replace(/(?<=[\d½¼¾]) (?=(?:[°%]|(?:h|min|kg|g|lb|oz|cm|mm|in)(?![\p{L}])))/gu, NBSP)
    .replace(/(?<=\d\u00a0h) (?=\d)/g, NBSP)
    .replace(/ \/ (?=\d)/g, `${NBSP}/${NBSP}`)
    .replace(/(?<=\d°) (?=[NSEW]\b)/g, NBSP)
