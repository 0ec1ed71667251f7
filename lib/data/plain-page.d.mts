export function plainPage(title: string, sentence: string, againS?: number): string
