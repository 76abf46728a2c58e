import type { Action } from '../actions/action.ts';
import { perform, start } from '../actions/action.ts';
import { addTake } from '../actions/add-take.ts';
import { benchSheet } from '../actions/bench-sheet.ts';
import { compareWithKin } from '../actions/compare-with-kin.ts';
import { copy } from '../actions/copy.ts';
import { cut } from '../actions/cut.ts';
import { feedAllThatNeed } from '../actions/feed-all.ts';
import { findCommand } from '../actions/find-command.ts';
import { handOver } from '../actions/hand-over.ts';
import { keysOf } from '../actions/keys-of.ts';
import { markInCase } from '../actions/mark-in-case.ts';
import { measureRibbon } from '../actions/measure-ribbon.ts';
import { newFromStock } from '../actions/new-from-stock.ts';
import { newEmptyStock, newLayout } from '../actions/new-layout.ts';
import { openDemo } from '../actions/open-demo.ts';
import { openFile } from '../actions/open-file.ts';
import { paste } from '../actions/paste.ts';
import { removeTake } from '../actions/remove-take.ts';
import { saveFile } from '../actions/save-file.ts';
import { selectJoined } from '../actions/select-joined.ts';
import { type Setting, themes, toggleHalfHp, togglePush } from '../actions/settings.ts';
import { shortcutsOf } from '../actions/shortcuts-of.ts';
import { showBuilt } from '../actions/show-built.ts';
import { showCase } from '../actions/show-case.ts';
import { showChange } from '../actions/show-change.ts';
import { showFaults } from '../actions/show-faults.ts';
import { showHelp, showKeys } from '../actions/show-help.ts';
import { showLayouts } from '../actions/show-layouts.ts';
import { showLicences } from '../actions/show-licences.ts';
import { showList } from '../actions/show-list.ts';
import { showPower } from '../actions/show-power.ts';
import { showStates } from '../actions/show-states.ts';
import { showStock } from '../actions/show-stock.ts';
import { showTakes } from '../actions/show-takes.ts';
import { toggleHeat } from '../actions/toggle-heat.ts';
import { useAction, useEditor, useSession, useTake } from '../hooks.ts';
import { isApple } from '../platform/keyboard.ts';
import { Icon } from './icon.tsx';
import { TextField } from './text-field.tsx';

interface ItemProps {
  readonly action: Action;
  /** Id of the menu, which closes. */
  readonly menu: string;
}

function Item({ action, menu }: ItemProps) {
  const editor = useEditor();
  const { enabled, label } = useAction(action);
  const choices = useSession((session) => session.keys);
  const [shortcut] = shortcutsOf(action, choices);
  return (
    <button
      type="button"
      className="item"
      popoverTarget={menu}
      popoverTargetAction="hide"
      aria-disabled={!enabled}
      onClick={() => start(editor, action)}
    >
      <span>{label}</span>
      {shortcut && <kbd>{keysOf(shortcut, isApple())}</kbd>}
    </button>
  );
}

function SettingItem({ setting }: { readonly setting: Setting }) {
  const editor = useEditor();
  useSession((session) => session);
  const { label } = useAction(setting);
  const on = setting.isOn(editor);
  return (
    <button type="button" className="item" aria-pressed={on} onClick={() => start(editor, setting)}>
      <span>{label}</span>
      {on && <Icon name="tick" />}
    </button>
  );
}

/** Everything that is seldom done: files, takes, settings, the look. */
export function MenuBody({ menu }: { readonly menu: string }) {
  const editor = useEditor();
  const take = useTake();
  return (
    <>
      <h2>Layout</h2>
      {[
        showCase,
        showList,
        showStock,
        showLayouts,
        showStates,
        compareWithKin,
        newLayout,
        newFromStock,
        newEmptyStock,
        openDemo,
        openFile,
        saveFile,
        handOver,
        benchSheet,
      ].map((action) => (
        <Item key={action.id} action={action} menu={menu} />
      ))}
      <h2>This take</h2>
      <TextField
        label="Name of the take"
        value={take.name}
        onCommit={(name) => perform(editor, { type: 'rename-take', take: take.id, name })}
      />
      {[
        showPower,
        toggleHeat,
        showFaults,
        feedAllThatNeed,
        showBuilt,
        markInCase,
        showChange,
        showTakes,
        addTake,
        removeTake,
      ].map((action) => (
        <Item key={action.id} action={action} menu={menu} />
      ))}
      <h2>Group</h2>
      {[selectJoined, measureRibbon, copy, cut, paste].map((action) => (
        <Item key={action.id} action={action} menu={menu} />
      ))}
      <h2>Moving</h2>
      {[togglePush, toggleHalfHp].map((setting) => (
        <SettingItem key={setting.id} setting={setting} />
      ))}
      <h2>Look</h2>
      {themes.map((setting) => (
        <SettingItem key={setting.id} setting={setting} />
      ))}
      <h2>Help</h2>
      {[showHelp, showKeys, findCommand, showLicences].map((action) => (
        <Item key={action.id} action={action} menu={menu} />
      ))}
    </>
  );
}
