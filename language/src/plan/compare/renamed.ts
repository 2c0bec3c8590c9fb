import type { Defined } from '../model/defined.ts';
import { type Difference, keyOf } from './differences.ts';

/** Something that a plan uses by name: `lure`, and which. */
export interface Used {
    readonly of: string;
    readonly definition: Defined;
}

export interface Renamed {
    readonly of: string;
    readonly before: Defined;
    readonly after: Defined;
}

/**
 * What is called otherwise and is still the same: only one of the plans uses each name, and what they name does not
 * differ. Two that could each be it are none, since nobody could say which.
 */
export function renamedAmong(before: readonly Used[], after: readonly Used[]): Renamed[] {
    const gone = before.filter((old) => !after.some((now) => isNamedAlike(old, now)));
    const come = after.filter((now) => !before.some((old) => isNamedAlike(old, now)));
    const alike = (one: Used) => (other: Used) => contentKey(one) === contentKey(other);
    return gone.flatMap((old): Renamed[] => {
        const [now, another] = come.filter(alike(old));
        const isOnly = now && !another && gone.filter(alike(old)).length === 1;
        return isOnly ? [{ of: old.of, before: old.definition, after: now.definition }] : [];
    });
}

/** Whether a difference says no more than that a thing has another name. */
export function isRenaming({ before, after }: Difference, renamed: readonly Renamed[]): boolean {
    return renamed.some((each) => each.before.title === before && each.after.title === after);
}

function isNamedAlike(a: Used, b: Used): boolean {
    return a.of === b.of && a.definition.name === b.definition.name;
}

function contentKey({ of, definition }: Used): string {
    const { name: _name, title: _title, origin: _origin, doc: _doc, ...content } = definition;
    return `${of} ${keyOf(content)}`;
}
