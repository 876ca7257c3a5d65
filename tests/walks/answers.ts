import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fitted, resized, START_CAMERA, toScreen } from '../../src/editor/camera';
import { pointsToShow } from '../../src/editor/things';
import { parseHome } from '../../src/home/file/parse';
import type { Home, Point } from '../../src/home/home';
import type { Page } from '@playwright/test';

interface Placed {
  id: string;
  at: Point;
  angle: number;
}

/** What the terminal answers for a home file: it sees the same places as the page, and says where they are. */
export interface Answers {
  home: Home;
  pieces: Placed[];
  alternatives: { pieces: Placed[] }[];
}

export function answersOf(file: string): Answers {
  const text = execFileSync('npm', ['run', '--silent', 'assess', '--', file, '--arrange'], {
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  const read = parseHome(readFileSync(file, 'utf8'));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { arrangement } = JSON.parse(text) as { arrangement: Omit<Answers, 'home'> };
  return { home: read.home, ...arrangement };
}

/** Where a point of the plan lies on the screen while the whole home is shown: by the camera that shows it. */
export async function onScreen(page: Page, home: Home): Promise<(at: Point) => { x: number; y: number }> {
  const box = (await page.getByRole('application', { name: 'The plan' }).boundingBox())!;
  const view = { stage: 'arrange', level: Object.keys(home.levels)[0]!, round: Object.keys(home.rounds)[0]! };
  const points = pointsToShow(home, view as Parameters<typeof pointsToShow>[1]);
  const camera = fitted(resized(START_CAMERA, box.width, box.height), points);
  return (at) => {
    const [x, y] = toScreen(camera, at);
    return { x: box.x + x, y: box.y + y };
  };
}
