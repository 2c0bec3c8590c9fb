/** Draws a box around a marked lure and its label: a colour alone would not do for everybody. */
export function ringMarked(host: HTMLElement, isNew: boolean): void {
    for (const old of host.querySelectorAll('.ring')) old.remove();
    for (const each of host.querySelectorAll<SVGGElement>('g.marked')) {
        if (!['lure', 'standby', 'note'].includes(each.dataset.role ?? '')) continue;
        const { x, y, width, height } = each.getBBox();
        const room = 12;
        const box = document.createElementNS('http://www.w3.org/2000/svg', 'rect');
        box.classList.add('ring', ...(isNew ? ['new'] : []));
        box.setAttribute('x', String(x - room));
        box.setAttribute('y', String(y - room));
        box.setAttribute('width', String(width + 2 * room));
        box.setAttribute('height', String(height + 2 * room));
        box.setAttribute('rx', '10');
        each.after(box);
    }
}
