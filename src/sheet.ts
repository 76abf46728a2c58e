export {
  type ChangeSheet,
  type ChangeStep,
  changeSheet,
  changeSheetBody,
  STAGE_WORDS,
  stagesOf,
} from './sheet/change-sheet.ts';
