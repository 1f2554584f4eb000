/**
 * A size code as people say it, with the colour where English wants it. Tubes are called by their code; rounds, hearts, flowers, rings and links
 * by their inches and what they are.
 * @example sizeInWords('round-5', 'white') // -> '5-inch white round'
 * @example sizeInWords('260', 'green') // -> '260 green'
 * @example sizeInWords('heart-6') // -> '6-inch heart'
 */
export function sizeInWords(code: string, between = ''): string {
  const words = between === '' ? '' : ` ${between}`;
  const [, shape, inches] = /^(round|heart|flower|ring|link)-(\d+(?:\.\d+)?)$/u.exec(code) ?? [];
  return shape === undefined ? `${code}${words}` : `${inches}-inch${words} ${shape === 'link' ? 'link balloon' : shape}`;
}
