/** One pair of hands. */
export interface Artist {
  readonly id: string;
  readonly name: string;
  /** Multiplies making time: 1 is the pace of the figures' minutes, 2 a newcomer. */
  readonly pace: number;
  /** Figures this artist makes; all if missing. */
  readonly figures?: readonly string[];
}
