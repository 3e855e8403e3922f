/** Only a path of this installation is followed; anything else leads to the start. */
export function ownPath(next: string | undefined): string {
  return next && /^\/(?![/\\])/.test(next) ? next : "/";
}
