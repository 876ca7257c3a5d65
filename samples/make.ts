import { BEDROOM_SOURCES, singleBedroom } from './singleBedroom';
import { FLAT_SOURCES, oneBedroomFlat } from './oneBedroomFlat';
import { HOUSE_SOURCES, terracedHouse } from './terracedHouse';
import { fileURLToPath } from 'node:url';
import { serialiseHome } from '../src/home/file/serialise';
import { writeFileSync } from 'node:fs';
import type { Sources } from '../src/engine/magnetics/fieldOfSources';

/** A sample home as a file, and what makes its field in the first round. */
export interface Sample {
  name: string;
  text: string;
  sources: Sources;
}

export function samples(): Sample[] {
  return [
    { name: 'terraced-house.home.json', text: serialiseHome(terracedHouse()), sources: HOUSE_SOURCES },
    { name: 'one-bedroom-flat.home.json', text: serialiseHome(oneBedroomFlat()), sources: FLAT_SOURCES },
    { name: 'single-bedroom.home.json', text: serialiseHome(singleBedroom()), sources: BEDROOM_SOURCES },
  ];
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const { name, text } of samples()) {
    writeFileSync(new URL(name, import.meta.url), text);
    console.log(`${name}: ${(text.length / 1024).toFixed(1)} kB`);
  }
}
