import type { KeyInput, Mark, PointerInput, ToolLoad, ToolName } from '../editor';
import { hitReach, snapReach } from '../input/hitTest';
import { toPlan } from '../camera';
import { createFixtureTool } from './fixture';
import { createOpeningTool } from './opening';
import { createPanTool } from './pan';
import { createPieceTool } from './piece';
import { createReadingTool } from './reading';
import { createRoomTool } from './room';
import { createScaleTool } from './scale';
import type { ScaleTool } from './scale';
import { createSelectTool } from './select';
import { createSourceTool } from './source';
import type { Aim, Bench, Tool } from './tool';
import { createWalkTool } from './walk';

export interface Toolbox {
  readonly name: ToolName;
  readonly load: ToolLoad;
  readonly tool: Tool;
  readonly scale: ScaleTool;
  takeUp(name: ToolName, load?: ToolLoad): void;
  aim(input: PointerInput, pressed: boolean): Aim;
  key(input: KeyInput): boolean;
  marks(): Mark[];
}

/** All tools, one of them in hand. */
export function createToolbox(bench: Bench, changed: () => void): Toolbox {
  const scale = createScaleTool(bench);
  const tools: Record<ToolName, Tool> = {
    select: createSelectTool(bench),
    pan: createPanTool(),
    room: createRoomTool(bench),
    opening: createOpeningTool(bench),
    fixture: createFixtureTool(bench),
    piece: createPieceTool(bench),
    source: createSourceTool(bench),
    reading: createReadingTool(bench),
    walk: createWalkTool(bench),
    scale,
  };
  let name: ToolName = 'select';
  let load: ToolLoad = {};

  return {
    get name() {
      return name;
    },
    get load() {
      return load;
    },
    get tool() {
      return tools[name];
    },
    scale,
    takeUp(next, loaded) {
      tools[name].cancel();
      load = loaded ?? (next === name ? load : {});
      name = next;
      bench.hoverOver(null);
      if (next !== 'reading') bench.setReadingPlace(null);
      changed();
    },
    aim(input, pressed) {
      const { scale: perMetre } = bench.camera;
      return {
        at: toPlan(bench.camera, input.x, input.y),
        x: input.x,
        y: input.y,
        type: input.type,
        shift: input.shift,
        alt: input.alt,
        command: input.command,
        reach: hitReach(input.type) / perMetre,
        pull: input.alt ? 0 : snapReach(input.type) / perMetre,
        pressed,
      };
    },
    key: (input) => tools[name].key?.(input) ?? false,
    marks: () => tools[name].marks(),
  };
}
