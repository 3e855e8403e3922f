"use client";

import { useState } from "react";
import { THEME_COOKIE, type Theme } from "@/app/_ui/theme/theme";

const ONE_YEAR_SECONDS = 31_536_000;
const CHOICES = [
  { value: "device", label: "As the device" },
  { value: "light", label: "Light" },
  { value: "dark", label: "Dark" },
] as const;

type Choice = (typeof CHOICES)[number]["value"];

/** Applies at once and keeps the choice in a cookie, so the server draws the next page in it. */
function apply(choice: Choice) {
  const root = document.documentElement;
  if (choice === "device") delete root.dataset.theme;
  else root.dataset.theme = choice;
  const age = choice === "device" ? 0 : ONE_YEAR_SECONDS;
  // The Cookie Store API is missing on plain-http addresses of a plant network.
  Object.assign(document, { cookie: `${THEME_COOKIE}=${choice}; path=/; max-age=${age}; samesite=lax` });
}

/** Light, dark, or as the device says. */
export function ThemeSwitch({ theme }: { readonly theme: Theme | null }) {
  const [choice, setChoice] = useState<Choice>(theme ?? "device");
  return (
    <fieldset>
      <legend className="label mb-1">Theme</legend>
      <div className="flex flex-wrap gap-x-4">
        {CHOICES.map(({ value, label }) => (
          <label
            key={value}
            className="inline-flex min-h-8 cursor-pointer items-center gap-2 max-sm:min-h-11"
          >
            <input
              type="radio"
              name="theme"
              className="tick"
              checked={choice === value}
              onChange={() => {
                setChoice(value);
                apply(value);
              }}
            />
            {label}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
