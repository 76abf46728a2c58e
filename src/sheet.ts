export { type ChangeStep, changeSheet, STAGE_WORDS, stagesOf } from './sheet/change-sheet.ts';
