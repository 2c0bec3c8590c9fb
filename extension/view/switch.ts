import { type View, views } from '../src/diagram/views.ts';

/** The switch between the views, and that between picture and words. */
export interface Switch {
    /** Says which view is on show. */
    check(view: View): void;
}

/** @param choose  another view was chosen; `table` turned the words on or off */
export function switchIn(choose: (view: View) => void, asTable: (on: boolean) => void): Switch {
    const radio = (view: View) => document.getElementById(`show-${view}`)!;
    const toggle = document.getElementById('as-table')!;
    const check = (chosen: View) => {
        for (const view of views) {
            radio(view).setAttribute('aria-checked', String(view === chosen));
            radio(view).tabIndex = view === chosen ? 0 : -1;
        }
    };
    const pick = (view: View) => {
        check(view);
        radio(view).focus();
        choose(view);
    };
    for (const [index, view] of views.entries()) {
        radio(view).addEventListener('click', () => pick(view));
        radio(view).addEventListener('keydown', (event) => {
            const last = views.length - 1;
            const by = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
            const to =
                by === undefined
                    ? { Home: 0, End: last }[event.key]
                    : (index + by + views.length) % views.length;
            if (to === undefined) return;
            event.preventDefault();
            pick(views[to]!);
        });
    }
    toggle.addEventListener('click', () => {
        const on = toggle.getAttribute('aria-pressed') !== 'true';
        toggle.setAttribute('aria-pressed', String(on));
        asTable(on);
    });
    return { check };
}
