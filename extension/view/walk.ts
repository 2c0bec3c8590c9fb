/**
 * Lets one go through the parts of a drawing by keyboard as through a list: a single stop for the Tab key, arrow
 * keys from one part to the next, Enter to go to the text.
 */
export interface Walk {
    /** Takes over a drawing that was just put up; whoever stood at a part of the one before stands there again. */
    enter(svg: SVGSVGElement, places: ReadonlySet<string>): void;
    /** Puts the stop for the Tab key at a part. */
    prefer(id: string | undefined): void;
}

export function walkIn(host: HTMLElement, reveal: (id: string) => void): Walk {
    let parts: SVGGElement[] = [];
    let stop: string | undefined;
    let known: ReadonlySet<string> = new Set();

    const partAt = (id: string | undefined) => parts.find(({ dataset }) => dataset.id === id);
    const stopAt = (part: SVGGElement | undefined) => {
        for (const each of parts) each.tabIndex = each === part ? 0 : -1;
        stop = part?.dataset.id;
    };
    const idOf = (target: EventTarget | null): string | undefined => {
        // What has no place of its own may lie in something that has.
        for (let at = (target as Element | null)?.closest<SVGElement>('[data-id]'); at; ) {
            const { id } = at.dataset;
            if (id !== undefined && known.has(id)) return id;
            at = at.parentElement?.closest<SVGElement>('[data-id]');
        }
        return undefined;
    };

    host.addEventListener('focusin', ({ target }) => {
        const part = (target as Element).closest<SVGGElement>('g[data-id]');
        if (part && parts.includes(part)) stopAt(part);
    });
    host.addEventListener('click', ({ target }) => {
        const id = idOf(target);
        if (id !== undefined) reveal(id);
    });
    host.addEventListener('keydown', (event) => {
        const at = parts.indexOf(document.activeElement as unknown as SVGGElement);
        if (at < 0 || event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return;
        const to = { ArrowDown: at + 1, ArrowRight: at + 1, ArrowUp: at - 1, ArrowLeft: at - 1 }[event.key];
        const end = { Home: 0, End: parts.length - 1 }[event.key];
        if (to !== undefined || end !== undefined) {
            const next = end ?? (to! + parts.length) % parts.length;
            event.preventDefault();
            parts[next]?.focus();
        }
        if (event.key === 'Enter' || event.key === ' ') {
            const id = idOf(event.target);
            event.preventDefault();
            if (id !== undefined) reveal(id);
        }
    });

    return {
        enter(svg, places) {
            known = places;
            parts = [...svg.querySelectorAll<SVGGElement>('g[data-id][aria-label]')];
            for (const part of svg.querySelectorAll<SVGGElement>('g[data-id]')) {
                const { id } = part.dataset;
                if (id === undefined || !places.has(id)) continue;
                part.classList.add('told');
                // To a screen reader it is something to press, not only something to see.
                if (part.hasAttribute('aria-label')) part.setAttribute('role', 'button');
            }
            stopAt(partAt(stop) ?? parts.find(({ dataset }) => dataset.role === 'lure') ?? parts[0]);
        },
        prefer: (id) => {
            const part = partAt(id);
            if (part && !host.contains(document.activeElement)) stopAt(part);
        },
    };
}
