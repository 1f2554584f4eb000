const usual = ['blue', 'white', 'red', 'yellow', 'green', 'pink', 'orange', 'violet', 'black', 'brown', 'sky', 'rose', 'blush', 'grey'];

/**
 * A colour for every role, in the order of the recipe: what is used where nobody says.
 * @example usualFill(['body', 'eyes']) // -> { body: 'blue', eyes: 'white' }
 */
export const usualFill = (roles: readonly string[]): Readonly<Record<string, string>> =>
  Object.fromEntries(roles.map((role, index) => [role, usual[index % usual.length] ?? 'blue']));
