import { cookies } from "next/headers";
import { THEME_COOKIE, type Theme, themeOf } from "@/app/_ui/theme/theme";

/** The theme the person chose on this device; null leaves it to the device. */
export async function readTheme(): Promise<Theme | null> {
  return themeOf((await cookies()).get(THEME_COOKIE)?.value);
}
