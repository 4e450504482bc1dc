import { command } from './command.ts';
import { type AssetEntry, holdAsset } from './hold-asset.ts';

/** Puts a picture into the head of the title block of every sheet, or with null takes it out. Refuses a file that cannot be kept. */
export const setLogo = command('Change logo', (draft, picture: AssetEntry | null) => {
  draft.settings.sheets.titleBlock.logo = picture && holdAsset(draft, picture, 'This picture cannot be kept with the plan. Choose it again.');
});
