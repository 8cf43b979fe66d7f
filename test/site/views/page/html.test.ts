import { expect, it } from 'vitest';
import { html, joined } from '../../../../src/site/views/page/html.ts';

it('what a note says is escaped, in text and in attributes', () => {
  const name = `<b>"Ruth" & 'Jory'</b>`;
  expect(html`<a title="${name}">${name}</a>`.markup).toBe(
    '<a title="&lt;b&gt;&quot;Ruth&quot; &amp; &#39;Jory&#39;&lt;/b&gt;">&lt;b&gt;&quot;Ruth&quot; &amp; &#39;Jory&#39;&lt;/b&gt;</a>',
  );
});

it('markup goes in as it is, lists one after the other, nothing for what is absent', () => {
  const parts = [html`<i>a</i>`, html`<i>b</i>`];
  expect(html`<p>${parts}${null}${false}${undefined}${3}</p>`.markup).toBe('<p><i>a</i><i>b</i>3</p>');
  expect(joined(parts, ' & ').markup).toBe('<i>a</i> &amp; <i>b</i>');
});
