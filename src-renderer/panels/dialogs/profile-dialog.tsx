import { useState } from 'react';
import { saveProfileInPlan } from '#shared/commands/save-profile-in-plan';
import { LIMIT_CATALOGUE, LIMIT_KEYS, type LimitInfo } from '#shared/profile/limit-catalogue';
import { type UnitProfile, blankProfile, unitProfileSchema } from '#shared/profile/unit-profile';
import { keepBytes } from '../../actions/plan-file.ts';
import { countOf } from '../../plan-words.ts';
import { Slip } from '../bench/slip.tsx';
import { useCommit, useShownPlan } from '../bench/use-plan.ts';
import { Choice } from '../fields/choice.tsx';
import { LongTextField, TextField } from '../fields/text-field.tsx';
import { useActionContext } from '../window-context.ts';
import { Dialog } from './dialog.tsx';
import { FileField } from './file-field.tsx';
import { LimitLine } from './limit-line.tsx';
import { ProfileAssemblyOrder } from './profile-assembly-order.tsx';
import { ProfileMadeFittings } from './profile-made-fittings.tsx';
import { ProfileOrifices } from './profile-orifices.tsx';
import { PipeRulesSlip } from './profile-rules.tsx';
import { useCloseDialog } from './use-close-dialog.ts';

const PARTS: readonly LimitInfo['part'][] = ['Cylinder', 'Pipe', 'Nozzle', 'Mounting', 'Release'];

/** An id that no profile of the plan has yet. */
const freeId = (taken: readonly string[], name: string): string => {
  const base = name.toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-+|-+$/g, '').slice(0, 60) || 'unit';
  for (let i = 1; ; i += 1) {
    const id = i === 1 ? base : `${base}-${i}`;
    if (!taken.includes(id)) return id;
  }
};

/** Parts that files of older versions do not have yet: blank, never guessed. */
const LATER_PARTS: Pick<UnitProfile, 'orifices' | 'madeFittings' | 'assemblyOrder' | 'teeAttitudes'> = { orifices: [], madeFittings: [], assemblyOrder: null, teeAttitudes: null };

/** Reads a profile file. Answers a sentence when it is none. */
export function readProfile(text: string): UnitProfile | string {
  try {
    const json: unknown = JSON.parse(text);
    const read = unitProfileSchema.safeParse(typeof json === 'object' ? { ...LATER_PARTS, ...json } : json);
    if (read.success) return read.data;
    const [issue] = read.error.issues;
    return `This is no unit profile: ${issue ? `${issue.path.join(' › ') || 'the file'}: ${issue.message}` : 'its parts do not fit'}. Take a file that was saved with “Save as a file” here.`;
  } catch {
    return 'This file cannot be read as a unit profile. Take a file that was saved with “Save as a file” here.';
  }
}

/** The figures of the unit's manual, part by part, each with the place it was read from. */
export function ProfileDialog() {
  const context = useActionContext();
  const close = useCloseDialog();
  const plan = useShownPlan();
  const commit = useCommit();
  const used = Object.values(plan.networks)[0]?.profile;
  const profiles = Object.values(plan.profiles);
  const [chosen, setChosen] = useState(used && plan.profiles[used] ? used : (profiles[0]?.id ?? ''));
  const [fault, setFault] = useState<string | null>(null);
  const profile = plan.profiles[chosen] ?? profiles[0];

  const add = (fresh: UnitProfile): void => {
    if (commit(saveProfileInPlan(fresh))) setChosen(fresh.id);
  };
  const takeFile = (bytes: Uint8Array): void => {
    const read = readProfile(new TextDecoder().decode(bytes));
    setFault(typeof read === 'string' ? read : null);
    if (typeof read !== 'string') add(read);
  };
  const blank = profile ? LIMIT_KEYS.filter((key) => !profile.limits[key]).length : 0;
  return (
    <Dialog
      name="profile"
      title="Unit profile"
      onClose={close}
      size="large"
      footer={
        <>
          <FileField label="Take from a file…" accept=".json" onFile={(_, bytes) => takeFile(bytes)} />
          {profile ? (
            <button
              type="button"
              className="button"
              onClick={() => void keepBytes(context, `${profile.name || profile.id}.profile.json`, new TextEncoder().encode(`${JSON.stringify(profile, null, 2)}\n`), 'application/json')}
            >
              Save as a file…
            </button>
          ) : null}
          <button
            type="button"
            className="button"
            onClick={() => {
              const name = 'My unit';
              add(blankProfile(freeId(profiles.map(({ id }) => id), name), name));
            }}
          >
            New blank profile
          </button>
          <button type="button" className="button is-main" onClick={close}>
            Done
          </button>
        </>
      }
    >
      {fault ? (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      ) : null}
      <p>The manual and the listing of the unit give these figures. A blank one is never guessed: what needs it is not checked.</p>
      {profile ? (
        <>
          <div className="fields">
            <Choice label="Profile" value={profile.id} options={profiles.map(({ id, name }) => ({ value: id, label: name || id }))} onCommit={setChosen} />
            <TextField label="Name" value={profile.name} required="A profile needs a name." most={400} onCommit={(name) => commit(saveProfileInPlan({ ...profile, name }))} />
          </div>
          {profile.isSample ? <p className="doubt">This is an invented sample: no real unit has these figures, and every sheet that rests on it says so. Make a new blank profile for your unit.</p> : null}
          <p className={blank > 0 ? 'is-open' : 'quiet'}>{blank > 0 ? `${countOf(blank, 'figure')} blank: not checked.` : 'Every figure is entered.'}</p>
          {PARTS.map((part) => (
            <Slip key={part} title={part}>
              <table className="limit-table">
                <thead>
                  <tr>
                    <th scope="col">Figure</th>
                    <th scope="col">Value</th>
                    <th scope="col">Read from</th>
                  </tr>
                </thead>
                <tbody>
                  {LIMIT_KEYS.filter((key) => LIMIT_CATALOGUE[key].part === part).map((key) => (
                    <LimitLine key={key} profile={profile} limit={key} />
                  ))}
                </tbody>
              </table>
              {part === 'Pipe' || part === 'Nozzle' ? <PipeRulesSlip profile={profile} part={part} /> : null}
              {part === 'Pipe' ? (
                <>
                  <ProfileMadeFittings key={profile.id} profile={profile} />
                  <ProfileAssemblyOrder profile={profile} />
                </>
              ) : null}
              {part === 'Nozzle' ? <ProfileOrifices key={profile.id} profile={profile} /> : null}
            </Slip>
          ))}
          <LongTextField label="Note" value={profile.note} onCommit={(note) => commit(saveProfileInPlan({ ...profile, note: note.slice(0, 4000) }))} />
        </>
      ) : null}
    </Dialog>
  );
}
