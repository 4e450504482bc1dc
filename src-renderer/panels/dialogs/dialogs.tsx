import type { ComponentType } from 'react';
import type { DialogId, State } from '../../store/state.ts';
import { useStore } from '../../store/use-store.ts';
import { ActionsDialog } from './actions-dialog.tsx';
import { HelpDialog } from './help-dialog.tsx';
import { IssueDialog } from '../revisions/issue-dialog.tsx';
import { ImportDialog } from './import-dialog.tsx';
import { InfoDialog } from './info-dialog.tsx';
import { ConflictDialog, LeaveDialog, RecoverDialog } from './leave-dialogs.tsx';
import { OpenDialog } from './open-dialog.tsx';
import { PrintDialog } from './print-dialog.tsx';
import { ProfileDialog } from './profile-dialog.tsx';
import { SaveAsDialog } from './save-as-dialog.tsx';
import { WayOutDialog } from '../ways-out/way-out-dialog.tsx';

const dialogOf = (state: State) => state.session.dialog;

const DIALOGS: Readonly<Record<NonNullable<DialogId>, ComponentType>> = {
  open: OpenDialog,
  'save-as': SaveAsDialog,
  import: ImportDialog,
  print: PrintDialog,
  issue: IssueDialog,
  'way-out': WayOutDialog,
  profile: ProfileDialog,
  info: InfoDialog,
  actions: ActionsDialog,
  recover: RecoverDialog,
  conflict: ConflictDialog,
  help: HelpDialog,
  discard: LeaveDialog,
};

/** The dialog that is open, if one is. */
export function Dialogs() {
  const dialog = useStore(dialogOf);
  if (!dialog) return null;
  const Shown = DIALOGS[dialog];
  return <Shown key={dialog} />;
}
