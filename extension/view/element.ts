/** What a page is made of. Text is only ever put in as text. */
export function element<N extends keyof HTMLElementTagNameMap>(
    name: N,
    text?: string,
): HTMLElementTagNameMap[N] {
    const made = document.createElement(name);
    if (text !== undefined) made.textContent = text;
    return made;
}

export function button(text: string, press: () => void): HTMLButtonElement {
    const made = element('button', text);
    made.type = 'button';
    made.addEventListener('click', press);
    return made;
}

/** A control with its name beside it. */
export function labelled(name: string, control: HTMLElement): HTMLElement {
    const label = element('label');
    label.append(`${name} `, control);
    return label;
}

/** @param choices  words by what they stand for */
export function select(
    choices: readonly (readonly [value: string, words: string])[],
    chosen: string,
    choose: (value: string) => void,
): HTMLSelectElement {
    const made = element('select');
    for (const [value, words] of choices) {
        const option = element('option', words);
        option.value = value;
        option.selected = value === chosen;
        made.append(option);
    }
    made.addEventListener('change', () => choose(made.value));
    return made;
}
