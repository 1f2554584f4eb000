/** What a draw from the key of a party or a guest is for. Numbers are permanent: another number is other luck for every book. */
export const purpose = {
  size: 1,
  joining: 2,
  patience: 3,
  hidden: 4,
  asking: 5,
  colour: 6,
  otherColour: 7,
  otherColourWhich: 8,
  otherFigure: 9,
  otherFigureWhich: 10,
  making: 11,
  choosing: 12,
  colourChoosing: 13,
  handingOver: 14,
  repeat: 15,
  repeatAfter: 16,
  repair: 17,
  repairAfter: 18,
  comesBack: 19,
  walking: 20,
  crowd: 21,
  group: 22,
  askingAgain: 32,
  firstPop: 64,
  members: 1024,
  hiddenMembers: 4096,
  preMade: 8192,
  rejection: 65536,
} as const;

/** Streams of a run: strips of the arrival plane are numbered upward from `strips`. */
export const stream = { arrivals: 1, service: 2, run: 3, strips: 16 } as const;
