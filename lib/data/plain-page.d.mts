export function plainPage(title: string, sentence: string, againS?: number): string
export const PLAIN_POLICY: string
