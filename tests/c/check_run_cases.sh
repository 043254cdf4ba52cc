#!/usr/bin/env bash
# Runs run_cases on lines whose outcome is known: a reader that passes everything would pass nothing here.
set -eu
program=$1
work=$2
lines=$work/known.cases

outcome() {
    local expected=$1
    cat >"$lines"
    local last
    last=$("$program" "$lines" | tail -n 1)
    if [[ $last != "$expected" ]]; then
        echo "expected: $expected"
        echo "     got: $last"
        exit 1
    fi
}

outcome "16 passed, 0 failed, 1 deviating" <<'LINES'
units.length.parse|feet|text=12'-3 5/8"|>length=3749.675 mm
units.length.parse|escaped|text=5%20mm|>length=5 mm
units.length.parse|within|text=1 in|>length=25 mm|~length=0.5 mm
units.length.parse|refused|text=12-3|>refused=parse
units.length.format|text|length=92.075 mm|format=in/32|>text=3 5/8"
units.convert|print_is_wrong|quantity=mass|value=1 lb|unit=g|>value=454|~value=0.1|!
pitch.corner|square|first=12:12|second=12:12|plan=90 deg|>dihedral=120 deg|>plan_first=45 deg|~dihedral=0.000001 deg
pitch.at_least|exact|pitch=1:48|minimum=1/4:12|>passes=true
trim.allowance|factor|rule=neutral-axis 0.5|thickness=2 mm|inside_radius=1 mm|angle=180 deg|>allowance=6.283185307180 mm
trim.setback_factor|refused_hem|angle=180 deg|>refused=out of range
spacing.spacing|by_name|{={"run":"4 ft","end_distance":"0 in","rule":{"equal":{"maximum":"2 ft"}}}|>positions.count=3|>positions[1]=2 ft|>last_spacing=null|>worksheet.steps[1]=2
sealant.joint-depth|a_single_value|{={"rule":"half-width","width":"3/4 in"}|>value=3/8 in
sealant.bead-order|other_units|{={"section":{"rectangular":{"width":"1 in","depth":"1 in"}},"length":"1 ft","waste_ratio":0.0,"tube":"10.1 floz"}|>area=1 in2|>volume=12 in3|~area=0.000001 in2|~volume=0.000001 in3|>tubes=1
closure.closure-setting|a_line_of_closures|{={"set_back":"1 in","face":"web","lower_flange":"2 in","top_flange":"0 in"}|>fasteners=2 in
spacing.spacing|refused_there|{={"run":"4 ft","end_distance":"0 in","rule":{"equal":{"maximum":"0 ft"}}}|>refused=out of range|>refused_at=rule.maximum
spacing.spacing|refused_by_name|{={"run":"4 ft","end_distance":"0 in","rule":{"equal":{"maximum":"0 ft"}}}|>refused=out of range
LINES

outcome "0 passed, 27 failed, 1 deviating" <<'LINES'
units.length.parse|off_by_one|text=5 mm|>length=5.000000001 mm
units.length.parse|outside|text=1 in|>length=25 mm|~length=0.3 mm
units.length.parse|bare_expectation|text=5 mm|>length=5
units.length.parse|bare_tolerance|text=5 mm|>length=5 mm|~length=1
units.length.parse|no_such_output|text=5 mm|>width=5 mm
units.length.parse|expects_nothing|text=5 mm
units.length.parse|not_refused|text=5 mm|>refused=parse
units.length.parse|refused_otherwise|text=5|>refused=parse
units.length.parse|no_input|>length=5 mm
units.convert|matches_but_declared_wrong|quantity=length|value=1 ft|unit=mm|>value=304.8|!
units.convert|no_quantity|quantity=cost|value=1 ft|unit=mm|>value=304.8
pitch.angle|other_unit|pitch=12:12|>angle=45 rad
pitch.at_least|fails|pitch=1:49|minimum=1/4:12|>passes=true
trim.girth|no_operation|profile=x|>girth=1 mm
spacing.spacing|refused_elsewhere|{={"run":"4 ft","end_distance":"0 in","rule":{"equal":{"maximum":"0 ft"}}}|>refused=out of range|>refused_at=run
spacing.spacing|no_input_by_name|>positions.count=3
spacing.spaces|no_calculation|{={"run":"4 ft"}|>positions.count=3
sealant.joint-depth|another_value|{={"rule":"half-width","width":"3/4 in"}|>value=1/2 in
sealant.joint-depth|no_field|{={"rule":"half-width","width":"3/4 in"}|>depth=3/8 in
spacing.spacing|an_array|{={"run":"4 ft","end_distance":"0 in","rule":{"equal":{"maximum":"2 ft"}}}|>positions=3
spacing.spacing|beyond_the_array|{={"run":"4 ft","end_distance":"0 in","rule":{"equal":{"maximum":"2 ft"}}}|>positions[3]=4 ft
spacing.spacing|another_step|{={"run":"4 ft","end_distance":"0 in","rule":{"equal":{"maximum":"2 ft"}}}|>worksheet.steps[1]=3
spacing.spacing|no_such_step|{={"run":"4 ft","end_distance":"0 in","rule":{"equal":{"maximum":"2 ft"}}}|>worksheet.steps[9]=2
sealant.bead-order|another_quantity|{={"section":{"rectangular":{"width":"1 in","depth":"1 in"}},"length":"1 ft","waste_ratio":0.0,"tube":"10.1 floz"}|>area=1 in3|~area=1 in3
sealant.bead-order|outside_in_another_unit|{={"section":{"rectangular":{"width":"1 in","depth":"1 in"}},"length":"1 ft","waste_ratio":0.0,"tube":"10.1 floz"}|>volume=12.1 in3|~volume=0.05 in3
trim.deduction|no_rule|rule=guess|thickness=1 mm|inside_radius=1 mm|angle=90 deg|>deduction=1 mm
no bar in this line
LINES
