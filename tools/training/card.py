"""The card of a model folder: what the model is, what it was trained on, how far it can be trusted."""
CAUTION = ("Not a medical device, not validated on patients. For a second look only: the reader decides. "
           "Nothing here excludes a fracture.")
SHARED_LIMITS = [
    "Trained and measured on simulated films only; its figures say nothing certain about films of patients.",
    "Other joints, other projections and heavily cropped or damaged films are outside what it was trained for.",
    "Metal, casts and severe displacement were simulated coarsely.",
]


def limits(task):
    if task == "view":
        return SHARED_LIMITS + ["The view error it gives is a rotation of the simulated elbow against the detector; a "
                                "displaced fragment can look the same."]
    return SHARED_LIMITS + [
        "It takes a crop in the canonical pose; on other crops its spread is not to be believed.",
        "Its spread was fitted on simulated films and still needs calibration.",
        "In the youngest the centres of ossification are faint or absent; look at visibility before using a landmark.",
    ]


def row(label, r):
    def of(entry, key):
        return f"{entry[key]:.2f}" if entry else "–"
    return (f"| {label} | {of(r['point_mm'], 'median')} / {of(r['point_mm'], 'p95')} | {of(r['edge_mm'], 'median')} / "
            f"{of(r['edge_mm'], 'p95')} | {of(r['slip_mm'], 'median')} | {r['coverage95'] if r['coverage95'] is not None else '–'} |")


def measured(task, e):
    if not e:
        return "No figures: the validation of this run did not finish.\n"
    lines = [f"{e['films']} simulated validation films (seeds from 10000), randomised as in training.", ""]
    if task == "landmarks":
        lines += ["| films | points, mm (median / 95 %) | edges across, mm (median / 95 %) | slip along, mm | inside the 95 % ellipse |",
                  "| --- | --- | --- | --- | --- |", row("all", e["all"]), row("injured", e["injured"]),
                  row("uninjured", e["uninjured"])]
        lines += [row(k, v) for k, v in e["bands"].items()]
        v = e["visibility"]
        lines += ["", f"Visibility is right for {v['accuracy']:.3f} of landmarks. "
                      f"Mean squared Mahalanobis distance {e['all']['mahalanobis2']} (2 would be exact)."]
    else:
        lines += [f"The right class of five: {e['accuracy']:.3f} of films.", "",
                  "| locator point | error in W (median / 95 %) |", "| --- | --- |"]
        lines += [f"| {k} | {v['median']:.2f} / {v['p95']:.2f} |" for k, v in e["locator_w"].items() if v]
    turn = e["view_error"]["degrees"]
    if turn:
        lines += ["", f"View error: mean absolute error {turn['mean']:.1f}°."]
    return "\n".join(lines) + "\n"


def card(manifest, size):
    what = {"landmarks": "Places the landmarks of the view on a crop in the canonical pose and says how far each may be off.",
            "view": "Says which view a film shows, if any, and where on it the elbow lies."}[manifest["task"]]
    trained = (manifest["evaluation"] or {}).get("trained")
    amount = f" {trained['films']} drawn films, {trained['steps']} steps, {trained['seconds']} s." if trained else ""
    bullets = "\n".join(f"- {text}" for text in manifest["limits"])
    return f"""# {manifest['name']} {manifest['version']}

{what}

**{CAUTION}**

| | |
| --- | --- |
| views | {', '.join(manifest['views'])} |
| input | 256 × 256, `{manifest['input']['normalisation']['recipe']}` version {manifest['input']['normalisation']['version']} |
| network | plain 3 × 3 U-Net, ONNX opset {manifest['onnx']['opset']}, {size / 1e6:.1f} MB |
| licence | {manifest['licence']} |

## Trained on
{manifest['training']['data']}{amount}

## Measured
{measured(manifest['task'], manifest['evaluation'])}
## Limits
{bullets}
"""
