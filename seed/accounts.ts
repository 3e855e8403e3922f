/** A sign-in of the demonstration company. Made for showing only: anyone who reads this can use it. */
export interface DemoAccount {
  readonly name: string;
  readonly email: string;
  readonly password: string;
  readonly role: "viewer" | "technician" | "planner" | "engineer" | "approver" | "admin";
  /** Codes of the sites the role holds at. */
  readonly sites: "all" | readonly string[];
}

export const demoAccounts: readonly DemoAccount[] = [
  {
    name: "Administrator",
    email: "admin@halvenor.example",
    password: "demo-admin-2026",
    role: "admin",
    sites: "all",
  },
  {
    name: "Group engineer",
    email: "engineer@halvenor.example",
    password: "demo-engineer-2026",
    role: "engineer",
    sites: "all",
  },
  {
    name: "Spares planner",
    email: "planner@halvenor.example",
    password: "demo-planner-2026",
    role: "planner",
    sites: "all",
  },
  {
    name: "Capital approver",
    email: "approver@halvenor.example",
    password: "demo-approver-2026",
    role: "approver",
    sites: "all",
  },
  {
    name: "Engineer Velmark",
    email: "engineer.vel@halvenor.example",
    password: "demo-engineer-vel",
    role: "engineer",
    sites: ["VEL"],
  },
  {
    name: "Technician Ostrowka",
    email: "technician.ost@halvenor.example",
    password: "demo-technician-ost",
    role: "technician",
    sites: ["OST"],
  },
  {
    name: "Viewer Thornby",
    email: "viewer.tho@halvenor.example",
    password: "demo-viewer-tho",
    role: "viewer",
    sites: ["THO"],
  },
  {
    name: "Viewer of the group",
    email: "viewer@halvenor.example",
    password: "demo-viewer-2026",
    role: "viewer",
    sites: "all",
  },
];
