/** Leads from the line that stands for a thing on a further page to the thing. Without this script it is one step more. */
import { fragmentIn } from '../site/views/page/fragment.ts';

function goOn(): void {
  const line = document.getElementById(fragmentIn(location.hash));
  const link = line?.closest('.goes-on') ? line.querySelector('a') : null;
  if (link) location.replace(link.href);
}

addEventListener('hashchange', goOn);
goOn();
