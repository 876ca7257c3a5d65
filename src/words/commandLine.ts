import type { FieldUnit, LengthUnit } from '../home/home';
import type { QuantityProblem } from '../home/problem';
import type { Profile } from '../engine/judging/profile';
import { changeText } from './arranging';
import { judge, metText } from './judge';
import { doseUnitName, fixedText, unitName } from './numbers';
import { quantitySentence } from './quantities';

export const HELP = `assess FILE.home.json [options]

Computes with the same engine as the page and prints one JSON object. Metres, µT, hours.

  --method M         auto, inverse-distance, kriging, source-kriging or source-sampling
  --round ID         the round of readings to map (a, b, …)
  --height H         height of the map above the floor: 1, 0.6, 60cm
  --target T         the value to aim for: 0.1, "1 mG", "100 nT"
  --guideline ID     the published set that gives rooms their words
  --level ID         this level only (l1, l2, …)
  --at X,Y[,LEVEL]   the estimate at a place; as often as wanted; --at=-3,2 where x is negative
  --points FILE.csv  the same for a table with the columns x,y[,level][,height]
  --along WALK       the estimate along a walk, its fall-off, and where the target is met
  --arrange          where every unlocked piece stands best
  --cautious         plan on the upper bound of the field (with --arrange)
  --next N           up to N places where a further reading helps most: the map, or with --arrange whether to move
  --for ID           the room or piece that they are to make surer (with --next)
  --grid STEP        the whole estimate of a level, one row [x, y, value, low, high] a cell
  --table            readable tables in place of JSON
  --help             this text

Exit status 0: done; 1: the file is bad or cannot be assessed; 2: the options are bad.
`;

/** A text of a file as a terminal may show it: what would steer the terminal is one blank each. */
export const withoutControls = (text: string): string => text.replace(/\p{Cc}/gu, ' ');

/** What is wrong with an option: the option, its value, and the way out. */
export const optionWords = {
  notMethod: (value: string) =>
    `--method “${value}”: not a method. Take auto, inverse-distance, kriging, source-kriging or source-sampling.`,
  quantity: (option: string, value: string, problem: QuantityProblem) =>
    `--${option} “${value}”: ${quantitySentence(problem)}`,
  notTarget: (value: string) =>
    `--target “${value}”: not a target. Write a field above zero and up to 1 T, like 0.1.`,
  tooHigh: (value: string, most: number) =>
    `--height “${value}”: higher than any room. Write metres above the floor, from 0 to ${most}.`,
  tooFar: (value: string, most: number) =>
    `--at “${value}”: farther out than any home. Write metres from −${most} to ${most}.`,
  tooFine: (value: string, least: number) =>
    `--grid “${value}”: finer than ${least} m. Write a step like 0.1 or 0.5.`,
  notPlace: (value: string) =>
    `--at “${value}”: not a place. Write X,Y or X,Y,LEVEL in metres with decimal points, like 2.5,1.2 or 2.5,1.2,l1.`,
  notCount: (value: string, most: number) =>
    `--next “${value}”: not a number of places. Write a whole number from 1 to ${most}.`,
  noValue: (name: string, value: string) => `--${name} “${value}”: it takes no value. Write --${name} alone.`,
  notOption: (name: string) => `--${name}: not an option. --help lists them.`,
  needsValue: (name: string) => `--${name}: it needs a value. Write --${name}=VALUE; --help shows which.`,
  noFile: 'No home file named. Write: assess FILE.home.json [options]; --help lists the options.',
  secondFile: (name: string) => `“${name}”: a second file. Name one home file.`,
  cautiousAlone: '--cautious: it says how to arrange. Add --arrange.',
  forAlone: '--for: it says what the next readings are to make surer. Add --next N.',
  forOrArrange: '--for with --arrange: the next readings are then of whether to move. Leave one of them out.',
  notReadable: (named: string) => `${named}: there is no such file to read. Check its name and folder.`,
  notInHome(option: string, id: string, what: string, have: readonly string[]): string {
    const wayOut = have.length > 0 ? `Take one of ${have.join(', ')}.` : `Leave --${option} out.`;
    return `--${option} “${id}”: the home has no such ${what}. ${wayOut}`;
  },
};

/** What is wrong with a table of places. */
export const pointWords = {
  badHead: (name: string, fields: readonly string[]) =>
    `--points ${name}: the first line is “${fields.join(',') || 'nothing'}”. Write x,y or x,y,level,height there.`,
  badRow: (name: string, row: number, fault: string) =>
    `--points ${name}, row ${row}: ${fault}. Give every row the columns of the first line.`,
  notNumber: (name: string, row: number, column: string, value: string) =>
    `--points ${name}, row ${row}, ${column} “${value}”: not a number. Write metres with a decimal point, like 2.5.`,
};

/** Heads and sentences of the readable tables. */
export const tableWords = {
  method: (method: string, why: string) => `Method: ${method} (${why}).`,
  rooms: 'Rooms',
  furniture: 'Furniture where it stands',
  places: 'Places',
  arrangement: 'Arrangement',
  wholeLevel: 'The whole level',
  room: 'room',
  use: 'use',
  piece: 'piece',
  drawn: 'drawn',
  notDrawn: 'the map is not drawn there',
  notKnown: 'not known',
  level: 'level',
  height: 'height, m',
  highest: 'highest',
  interval: '90 % interval',
  below95: '95 % below',
  angle: 'angle',
  then: 'then',
  along: 'along, m',
  middle: (unit: FieldUnit) => `middle, ${unitName(unit)}`,
  mean: (unit: FieldUnit) => `mean, ${unitName(unit)}`,
  estimate: (unit: FieldUnit) => `estimate, ${unitName(unit)}`,
  doseADay: (unit: FieldUnit) => `dose a day, ${doseUnitName(unit)}`,
  now: (unit: FieldUnit) => `now, ${doseUnitName(unit)}`,
  over: (edge: string) => `over ${edge}`,
  total(answer: { before: number; after: number; low: number; high: number }, unit: FieldUnit): string {
    const change = changeText(answer, unit);
    return `Daily dose from ${change.before} to ${change.after} ${change.unit} (${change.interval}).`;
  },
  noFurniture: 'No piece of furniture is on the plan.',
  nothingMayMove: 'Nothing may move.',
  stays: (name: string, why: string) => `${name} stays. ${why}`,
  falloff: ({ falloff, falloffSd }: Pick<Profile, 'falloff' | 'falloffSd'>) =>
    falloff === null || falloffSd === null
      ? 'The readings do not tell how fast it falls.'
      : `It falls about as 1/r^${fixedText(falloff, 1)} (± ${fixedText(falloffSd, 1)} in the power).`,
  targetAt(met: Profile['targetAt'], unit: LengthUnit): string {
    if (!met) return judge.notMet;
    const { best, interval } = metText(met, unit);
    return `${judge.met}${best}${judge.along('')} ${interval}.`;
  },
};
