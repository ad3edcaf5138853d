import type { Model } from '../../model/shell.js';

/** What the shop calls a record, beside its id; empty where it has no name of its own. */
export function nameOf(id: string, { shell }: Model): string {
  const record = shell.byId.get(id)?.record as Readonly<Record<string, unknown>> | undefined;
  const said = record?.name ?? record?.part ?? record?.nodeKind ?? record?.panelKind;
  return typeof said === 'string' ? said : '';
}
