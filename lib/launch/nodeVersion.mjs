/** Why this Node version cannot run Ebbline, in one sentence, or undefined when it can. */
export function refusalOfNode(version, oldest) {
  const [major, minor] = parts(version);
  const [oldestMajor, oldestMinor] = parts(oldest);
  if (major > oldestMajor || (major === oldestMajor && minor >= oldestMinor)) return undefined;
  return `Ebbline needs Node ${oldestMajor}.${oldestMinor} or newer, and this is ${version.replace("v", "")}.`;
}

function parts(version) {
  const found = /(\d+)\.(\d+)/.exec(version);
  return found ? [Number(found[1]), Number(found[2])] : [0, 0];
}
