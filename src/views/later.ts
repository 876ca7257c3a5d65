import type { Component } from 'svelte';
import type { Stage } from '../editor/editor';
import type { EditorState } from './editorState.svelte';
import ArrangePanel from './panels/arrange/ArrangePanel.svelte';
import HomesDialog from './panels/HomesDialog.svelte';
import JudgePanel from './panels/judge/JudgePanel.svelte';
import KeysDialog from './panels/KeysDialog.svelte';
import MapPanel from './panels/map/MapPanel.svelte';
import ReportPanel from './panels/ReportPanel.svelte';
import SurveyPanel from './panels/survey/SurveyPanel.svelte';
import UnitsDialog from './panels/UnitsDialog.svelte';
import Report from './report/Report.svelte';

/** What the first view can do without, fetched as one once the page stands. */
export const later = {
  Report,
  HomesDialog,
  KeysDialog,
  UnitsDialog,
  panels: {
    survey: SurveyPanel,
    map: MapPanel,
    judge: JudgePanel,
    arrange: ArrangePanel,
    report: ReportPanel,
  } satisfies Record<Exclude<Stage, 'sketch'>, Component<{ state: EditorState }>>,
};
