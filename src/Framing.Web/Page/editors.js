// The small editors behind the underlined parts of the sentence. Each gives changes of the plan file, as TOML has them.

const text = (value) => JSON.stringify(value);

const grids = [
  ["fewest", "as few panels as hold it, in a full rectangle"],
  ["adapted", "fewer still, in bands that follow the outline"],
  ["fixed", "columns and rows as given below"],
];

export function editorFor(part, form, strategies) {
  switch (part) {
    case "target":
      return {
        title: "What to frame",
        fields: [
          { name: "names", label: "Objects, with commas between them", value: form.names.join(", "), hint: "Any name the catalogue knows; several make one target together." },
          { name: "margin", label: "Sky to keep free on every side, minutes of arc", type: "number", min: 0, max: 600, step: "any", value: form.marginArcmin },
        ],
        edits: (values) => [
          ...(names(values.names).join() === form.names.join() ? [] : [
            { key: "target.names", value: `[${names(values.names).map(text).join(", ")}]` },
            ...["target.centre", "target.size_arcmin", "target.angle_deg", "target.outline"].map(gone),
            ...free(form),
          ]),
          { key: "target.margin_arcmin", value: number(values.margin) },
        ],
      };
    case "rig":
      return {
        title: "The lens or telescope",
        fields: form.rigIsFile
          ? [{ note: "The rig stands in a file of its own. Change it there, or name another file in the plan's text." }]
          : [{ name: "focal", label: "Focal length, mm", type: "number", min: 1, step: "any", value: form.focalLengthMm }],
        edits: (values) => (form.rigIsFile ? [] : [{ key: "rig.focal_length_mm", value: number(values.focal) }]),
      };
    case "angle":
      return strategyEditor("How the camera is turned", "rotation", form.rotation, form.rotationSettings, strategies, (name, settings) => [
        ...settings("rotation"),
        { key: "rotation.strategy", value: text(name) },
      ]);
    case "overlap":
      return strategyEditor("How much sky neighbours share", "overlap", form.overlap, form.overlapSettings, strategies, (name, settings) => [
        ...settings("mosaic"),
        { key: "mosaic.overlap", value: text(name) },
      ]);
    case "panels":
      return {
        title: "The grid of panels",
        fields: [
          { name: "grid", label: "How many", options: grids, value: form.grid },
          { name: "columns", label: "Columns", type: "number", min: 1, max: 1000, step: 1, value: form.columns },
          { name: "rows", label: "Rows", type: "number", min: 1, max: 1000, step: 1, value: form.rows },
          { name: "turn", label: "Turn the camera again at each panel", type: "checkbox", value: form.turnCameraAtEachPanel },
        ],
        edits: (values) => [
          { key: "mosaic.grid", value: values.grid === "fixed" ? `[${whole(values.columns)}, ${whole(values.rows)}]` : text(values.grid) },
          { key: "mosaic.turn_camera_at_each_panel", value: values.turn ? "true" : "false" },
        ],
      };
    default:
      return {
        title: "The night",
        fields: [{ name: "date", label: "The evening's date at the site", type: "date", min: "1900-01-01", max: "2100-12-31", value: form.evening }],
        edits: (values) => [{ key: "night.date", value: values.date || '""' }],
      };
  }
}

export function placed(sketch, form) {
  const angle = ((Math.round(sketch.angleDeg * 100) / 100) + 360) % 360;
  return [
    { key: "mosaic.centre", value: text(`${sketch.raDeg.toFixed(5)}, ${sketch.decDeg >= 0 ? "+" : ""}${sketch.decDeg.toFixed(5)}`) },
    { key: "mosaic.grid", value: `[${form.columns}, ${form.rows}]` },
    ...Object.keys(form.rotationSettings).filter((key) => key !== "angle_deg").map((key) => gone(`rotation.${key}`)),
    { key: "rotation.strategy", value: text("at-angle") },
    { key: "rotation.angle_deg", value: String(angle) },
  ];
}

export function free(form) {
  return form.centreIsFixed ? [gone("mosaic.centre"), { key: "mosaic.grid", value: text("fewest") }, ...bestAngle(form)] : [];
}

export function bestAngle(form) {
  return form.rotation === "at-angle" ? [gone("rotation.angle_deg"), { key: "rotation.strategy", value: text("to-outline") }] : [];
}

function strategyEditor(title, decides, chosen, settings, strategies, edits) {
  const known = strategies.filter((found) => found.decides === decides);
  const all = new Map(known.flatMap((found) => found.settings.map((setting) => [setting.name, setting])));
  return {
    title,
    fields: [
      { name: "strategy", label: "Strategy", options: known.map((found) => [found.name, `${found.name}: ${found.summary}`]), value: chosen, rebuild: true },
      ...known.flatMap((found) => found.settings.map((setting) => ({
        name: `${found.name} ${setting.name}`,
        only: found.name,
        label: setting.summary,
        type: setting.kind === "flag" ? "checkbox" : setting.kind === "number" ? "number" : "text",
        step: "any",
        value: (found.name === chosen ? settings[setting.name] : undefined) ?? (setting.default === null || setting.default === undefined ? "" : setting.kind === "flag" ? setting.default === "true" : setting.default),
      }))),
    ],
    edits: (values) => {
      const own = known.find((found) => found.name === values.strategy)?.settings ?? [];
      return edits(values.strategy, (table) => [
        ...[...all.keys()].filter((key) => !own.some((setting) => setting.name === key)).map((key) => gone(`${table}.${key}`)),
        ...own.map((setting) => {
          const value = values[`${values.strategy} ${setting.name}`];
          return value === "" || value === undefined
            ? gone(`${table}.${setting.name}`)
            : { key: `${table}.${setting.name}`, value: setting.kind === "text" ? text(value) : setting.kind === "flag" ? String(Boolean(value)) : number(value) };
        }),
      ]);
    },
  };
}

const names = (value) => value.split(",").map((name) => name.trim()).filter((name) => name.length > 0);
const gone = (key) => ({ key, value: null });
const number = (value) => (value === "" || Number.isNaN(Number(value)) ? text(String(value)) : String(Number(value)));
const whole = (value) => String(Math.trunc(Number(value) || 0));
