import type { TwoMinuteTest } from '@twistwright/repertoire';
import type { LocalDate } from '@twistwright/units';

/**
 * A two-minute test of one bag: what was measured, and nothing that was worked out from it. Tests are added, or taken back when they were
 * wrong; what is believed of a size code and maker follows from all of them (`workingsOf`).
 */
export interface BalloonTest extends TwoMinuteTest {
  readonly id: string;
  readonly day: LocalDate;
  /** Size code of a tube. */
  readonly size: string;
  /** Whose balloons they are; missing: nobody knows. Capital letters and spaces do not tell makers apart. */
  readonly maker?: string;
  /** The item that the bag was bought as. */
  readonly item?: string;
  readonly note?: string;
}
