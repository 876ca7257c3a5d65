import { printAccuracyTable } from './accuracyTable';
import { printArrangeTable, printArrangeTruth } from './arrangeTable';
import { printPlacedTable } from './placed';
import { printSpeedTable } from './speedTable';

/**
 * Speed, arranging, and accuracy on known fields, each in its table; with the name of one that alone: `npm run bench -- accuracy
 * "along walls" wandering --homes 20`, of these builds and so many homes each; `arrange` holds it against trying everything.
 */
const [part, ...rest] = process.argv.slice(2);
const at = rest.indexOf('--homes');
const homes = at < 0 ? undefined : Number(rest[at + 1]);
const builds = rest.filter((_, i) => at < 0 || (i !== at && i !== at + 1));

if (!part || part === 'speed') await printSpeedTable();
if (!part || part === 'arrange') await printArrangeTable(homes);
if (part === 'arrange') printArrangeTruth();
if (!part || part === 'accuracy') printAccuracyTable(builds, homes);
if (!part || part === 'placed') printPlacedTable();
