# Drawings
doc-north-letter = N
doc-kind-survey = yard survey
doc-kind-tape = tape sheet
doc-row-scale = scale
doc-row-date = date
doc-row-yard = yard
doc-row-free = free
doc-row-lengths = lengths
doc-scale-on = { $scale } on { $paper }
doc-lengths-metres = metres
doc-lengths-feet = feet and inches
doc-check-bar = Check the bar first: { $length } is { $paper }.
doc-caution-plan = This plan is advice: local codes and licensed people come first. Keep zones, doors and routes clear.
doc-legend = Legend
doc-legend-margin = margin, not painted
doc-legend-soft = surface that is not painted
doc-legend-clear = clear zone
doc-legend-alone = zone shared with nothing
doc-legend-remark = puddle, slope or track
doc-legend-floor = clear floor at a door
doc-legend-leaf = door or gate swings
doc-legend-drain = drain or cover
doc-legend-route = route kept open
doc-legend-wall = wall
doc-legend-fence = fence
doc-legend-hedge = hedge
doc-legend-kerb = kerb
doc-legend-drop = drop
doc-legend-open = open edge
doc-legend-tree = tree; the crown is a sign only
doc-legend-gate = gate
doc-legend-corner = corner, surveyed
doc-legend-inner = point inside, surveyed
doc-legend-stand = where staff stand
doc-inset = Survey
doc-inset-ellipses = 95 % ellipses, { $times } times the scale of this inset
doc-inset-doubtful = doubtful: measure it again
doc-inset-unchecked = no other reading checks it
doc-stand = staff stand
doc-label-swing = 2 × pivot { $pivot } each way
doc-label-clear = { $clear } kept clear
doc-label-route = { $from } to { $to }, { $width } kept open
doc-label-door = { $name } door
doc-label-gate = { $name } gate
doc-label-opening = { $width } wide
doc-remark-puddle = puddle
doc-remark-old-paint = old paint
doc-remark-trike-path = trike path
doc-remark-slope = slope
doc-surface-asphalt = asphalt
doc-surface-concrete = concrete
doc-surface-paving = paving
doc-surface-old-paint = old paint
doc-surface-sealer = sealer
doc-surface-rubber = rubber surfacing
doc-surface-mulch = bonded mulch
doc-surface-carpet = carpet
doc-surface-loose-fill = loose fill
doc-surface-sand = sand
doc-surface-grass = grass
doc-surface-soil = soil
doc-surface-wood = wood
doc-surface-steel = steel
doc-surface-tactile = tactile paving
doc-told-title = { $name }: { $kind }
doc-told-yard = Plan of the yard { $name } at { $scale }, { $width } by { $height } overall, yard area { $area }, with { $fixtures ->
        [one] one fixture
       *[other] { $fixtures } fixtures
    }, { $doors ->
        [one] one door
       *[other] { $doors } doors
    } and { $gates ->
        [one] one gate
       *[other] { $gates } gates
    }, the ground kept clear hatched by kind, dimensions, scale bar and title block.
