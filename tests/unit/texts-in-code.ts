import ts from 'typescript'

/** Where a text for people stands in the code of a screen: in JSX, in a label, or as a sentence in a constant. */
export interface Found {
  readonly line: number
  readonly text: string
}

/** Attributes and properties that are read aloud or shown. */
const LABELS = new Set(
  'aria-label aria-description aria-roledescription aria-valuetext data-label title placeholder alt label why hint summary legend words button what none save'.split(
    ' ',
  ),
)
const hasWords = (text: string) => /\p{L}{2}/u.test(text.replaceAll(/&[a-z]+;/g, ''))
/** Three words or more that begin as a sentence does. */
const isSentence = (text: string) => /^[“"]?\p{Lu}[\p{L}’'-]*[,:.]? \S+ \S/u.test(text.trim())

/** The literal texts of one file, each once. Names of files, classes, roles and keys are no texts. */
export function textsIn(file: string, code: string): readonly Found[] {
  const source = ts.createSourceFile(file, code, ts.ScriptTarget.Latest, true, ts.ScriptKind.TSX)
  const found: Found[] = []
  const keep = (node: ts.Node, text: string) => {
    const { line } = source.getLineAndCharacterOfPosition(node.getStart(source))
    found.push({ line: line + 1, text: text.replaceAll(/\s+/g, ' ').trim() })
  }
  const walk = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isTypeNode(node)) return
    if (ts.isJsxText(node) && hasWords(node.text)) keep(node, node.text)
    const text = literalOf(node)
    if (text !== undefined && hasWords(text) && !isHidden(node) && (isSentence(text) || isTitle(node) || isShown(node)))
      keep(node, text)
    node.forEachChild(walk)
  }
  walk(source)
  return found
}

function literalOf(node: ts.Node): string | undefined {
  if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) return node.text
  if (ts.isTemplateExpression(node))
    return [node.head.text, ...node.templateSpans.map(({ literal }) => literal.text)].join(' … ')
  return undefined
}

/** What only the code reads: a class, an error that is thrown. */
const isHidden = (node: ts.Node): boolean =>
  ts.isJsxAttribute(node)
    ? node.name.getText() === 'className'
    : ts.isThrowStatement(node) ||
      isError(node) ||
      (!ts.isSourceFile(node) && !ts.isBlock(node) && isHidden(node.parent))

const isError = (node: ts.Node) => ts.isNewExpression(node) && node.expression.getText().endsWith('Error')

/** Whether the value of this literal reaches the page by itself: through a choice, but through no call. */
function isShown(node: ts.Node): boolean {
  const { parent } = node
  if (ts.isJsxAttribute(parent)) return LABELS.has(parent.name.getText())
  if (ts.isPropertyAssignment(parent)) return parent.initializer === node && LABELS.has(parent.name.getText())
  if (ts.isJsxExpression(parent))
    return ts.isJsxAttribute(parent.parent) ? LABELS.has(parent.parent.name.getText()) : true
  if (ts.isConditionalExpression(parent)) return parent.condition !== node && isShown(parent)
  if (ts.isParenthesizedExpression(parent)) return isShown(parent)
  if (ts.isBinaryExpression(parent)) return isJoin(parent.operatorToken.kind) && isShown(parent)
  return false
}
/** A capital and a small letter, where a value is kept or handed back: "First line", but no key on a keyboard. */
function isTitle(node: ts.Node): boolean {
  const text = ts.isTemplateExpression(node) ? node.head.text : (literalOf(node) ?? '')
  if (
    !/^\p{Lu}\p{Ll}/u.test(text) ||
    /^(Arrow|Page(Up|Down)$|Escape$|Enter$|Home$|End$|Tab$|Letter$|Emberslate$|Content-)/.test(text)
  )
    return false
  const { parent } = node
  if (ts.isPropertyAssignment(parent)) return parent.initializer === node
  return (
    ts.isArrayLiteralExpression(parent) ||
    ts.isCallExpression(parent) ||
    ts.isArrowFunction(parent) ||
    ts.isReturnStatement(parent) ||
    ts.isVariableDeclaration(parent) ||
    (ts.isConditionalExpression(parent) && parent.condition !== node)
  )
}
const isJoin = (kind: ts.SyntaxKind) =>
  [
    ts.SyntaxKind.AmpersandAmpersandToken,
    ts.SyntaxKind.BarBarToken,
    ts.SyntaxKind.QuestionQuestionToken,
    ts.SyntaxKind.PlusToken,
  ].includes(kind)
