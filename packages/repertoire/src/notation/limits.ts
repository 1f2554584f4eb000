/** Bounds that keep any text harmless. All are far beyond what one pair of hands makes. */
export const limits = {
  /** Characters of one recipe. */
  characters: 200_000,
  /** Balloons of one recipe, copies counted. */
  balloons: 300,
  /** Moves of one recipe after all repeats. */
  moves: 4000,
  /** Bubbles of one recipe after all repeats. */
  bubbles: 2000,
  /** Copies of one group or piece. */
  times: 100,
  /** Groups within groups. */
  depth: 4,
  /** Characters of a name or label. */
  name: 40,
  /** Characters of a note. */
  note: 300,
  /** Shortest and longest bubble, in inches. */
  shortest: 0.05,
  longest: 100,
  /** Problems reported in one reading. */
  problems: 100,
} as const;
