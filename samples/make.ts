import { oneBedroomFlat } from './oneBedroomFlat';
import { serialiseHome } from '../src/home/file/serialise';
import { singleBedroom } from './singleBedroom';
import { terracedHouse } from './terracedHouse';
import { fileURLToPath } from 'node:url';
import { writeFileSync } from 'node:fs';

/** The sample homes as files: name and text. */
export function sampleFiles(): { name: string; text: string }[] {
  return [
    { name: 'terraced-house.home.json', text: serialiseHome(terracedHouse()) },
    { name: 'one-bedroom-flat.home.json', text: serialiseHome(oneBedroomFlat()) },
    { name: 'single-bedroom.home.json', text: serialiseHome(singleBedroom()) },
  ];
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const { name, text } of sampleFiles()) {
    writeFileSync(new URL(name, import.meta.url), text);
    console.log(`${name}: ${(text.length / 1024).toFixed(1)} kB`);
  }
}
