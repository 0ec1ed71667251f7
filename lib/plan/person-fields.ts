/**
 * What a text of a shoot or of its log can tell of a person, and so what becomes of it when that person is erased. A test
 * walks the schemas: a field that is new has to be decided here.
 */
export const FATES = {
  /** A person by id or role: replaced by the neutral id where the id tells who it is. */
  person: 'renamed',
  /** The name of the person themself. */
  name: 'removed',
  /** Somebody's name or number, alone in its field: removed where it is theirs. */
  called: 'removed',
  /** Part of a contact, which goes whole. */
  contact: 'removed',
  /** What people on set cannot eat: the clause that tells of them goes. */
  health: 'shortened',
  /** An address of the web: removed where it has their name in it. */
  web: 'removed',
  /** A phone or a probe, by its name. */
  device: 'renamed',
  /** Free text: the whole name and the number go, a single word of the name on demand. */
  words: 'blanked',
  /** What shots, cameras, files are called: other lines hang on it, so it stays and is told. */
  thing: 'stays',
  /** Nobody can be told in it. */
  nobody: 'stays',
} as const
export type Field = keyof typeof FATES
export type Fields = Readonly<Record<string, Field>>

export const SHOOT_FIELDS: Fields = {
  title: 'words',
  date: 'nobody',
  zone: 'nobody',
  'place/name': 'words',
  authority: 'nobody',
  'cooks/*/id': 'thing',
  'cooks/*/roast/cut': 'nobody',
  'cooks/*/roast/custom/name': 'words',
  'cooks/*/cooker/name': 'words',
  'cooks/*/stages/*/probe/at': 'nobody',
  'cooks/*/ready/by': 'nobody',
  'sides/*/id': 'thing',
  'sides/*/title': 'words',
  'sides/*/cook': 'thing',
  'sides/*/needs/*': 'person',
  'people/*/id': 'person',
  'people/*/roles/*': 'person',
  'people/*/name': 'name',
  'cameras/*/id': 'thing',
  'tasks/*/id': 'thing',
  'tasks/*/title': 'words',
  'tasks/*/cook': 'thing',
  'tasks/*/from': 'nobody',
  'tasks/*/to': 'nobody',
  'tasks/*/needs/*': 'person',
  'shots/*/id': 'thing',
  'shots/*/title': 'words',
  'shots/*/cook': 'thing',
  'shots/*/between/*': 'nobody',
  'shots/*/from': 'nobody',
  'shots/*/to': 'nobody',
  'shots/*/needs/*': 'person',
  'shots/*/camera': 'thing',
  'shots/*/place': 'words',
  'shots/*/after/*': 'thing',
  'card/title': 'words',
  'card/intro': 'words',
  'card/ingredients/*/what': 'words',
  'card/ingredients/*/much': 'words',
  'card/ingredients/*/food': 'words',
  'card/storage': 'words',
  'card/kit/*': 'words',
  'card/steps/*/id': 'thing',
  'card/steps/*/text': 'words',
  'card/steps/*/override/*/sentence': 'words',
  'card/steps/*/override/*/reason': 'words',
  'callSheet/emergency': 'called',
  'callSheet/hospital': 'words',
  'callSheet/contacts/*/name': 'contact',
  'callSheet/contacts/*/role': 'contact',
  'callSheet/contacts/*/phone': 'contact',
  'callSheet/allergens': 'health',
  'callSheet/parking': 'words',
  'callSheet/notes': 'words',
  'coverage/left/*': 'thing',
  'coverage/tasksLeft/*': 'thing',
  'publish/author': 'called',
  'publish/page': 'web',
  'publish/image': 'web',
  'publish/video/url': 'web',
  'publish/video/title': 'words',
  'publish/video/uploaded': 'nobody',
  'publish/keywords': 'words',
  'publish/cuisine': 'words',
  'publish/category': 'words',
  'risk/fireRules': 'words',
  'risk/responsible': 'called',
  'clips/*/id': 'thing',
  'clips/*/camera': 'thing',
  'clips/*/start': 'nobody',
}
