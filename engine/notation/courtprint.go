package notation

import (
	"strings"
	"unicode"

	"example.org/netpost/engine/court"
	"example.org/netpost/engine/play"
)

// readCourtPrint reads a text that is word for word what an alignment or a
// line-up says of itself, a grid or lengths, or a set as a scorer types it.
func readCourtPrint(text string) (play.Spoken, bool) {
	text = strings.TrimSuffix(strings.TrimSpace(text), ".")
	ss := strings.Split(text, ", ")
	if a, ok := court.ReadPrint(ss); ok {
		return a, true
	}
	if l, ok := court.ReadLineup(ss); ok {
		return l, true
	}
	if a, ok := readGrid(text); ok {
		return a, true
	}
	if l, ok := readHistory(text); ok {
		return l, true
	}
	return nil, false
}

var (
	gridHead = whenUsed(`(?i)^\s*(receiving|receive|receivers|serving|serve|servers|a|b|r|s)?(?:\s+team)?\s*(?:grid)?\s*:?\s*`)
	gridTail = whenUsed(`(?i)[\s,.;:?]*(?:grid|overlap|ok|legal|fault|position fault|is that an? overlap|in order|at contact|at service contact)?[\s.?]*$`)
	placed   = whenUsed(`^([1-6])\s*(?:at|@|=|:)\s*(.+)$`)
	lengthIn = `-?\d+(?:\.\d+)?\s*(?:cm|mm|m|ft|feet|in|'|")(?:\s*\d+(?:\.\d+)?\s*(?:in|"))?`
	spotForm = whenUsed(`(?i)^(` + lengthIn + `)\s*[x/ ]\s*(` + lengthIn + `)$`)
)

// readGrid reads the positions of a team as typed by rows, the one nearest to
// the net first: "receiving: 4 . 3 . 2 / . 5 . 6 . 1"; or by lengths from the
// own left side line and from the net: "receiving: 1 at 7.5 m 7 m; 2 at 7.5 m
// 2 m". Two teams are parted by a vertical bar. A grid tells only how players
// stand to one another, not how far from the lines.
func readGrid(text string) (*court.Alignment, bool) {
	out := &court.Alignment{}
	seen := [3]bool{}
	for _, part := range strings.Split(text, "|") {
		head := gridHead().FindStringSubmatch(part)
		rest := strings.TrimPrefix(part, head[0])
		between := func(r rune) bool { return unicode.IsSpace(r) || r == ';' || r == ',' || r == '/' }
		if first := strings.TrimLeftFunc(rest, between); first == "" || !strings.ContainsRune(".-_123456", rune(first[0])) {
			return nil, false // neither a cell nor a position
		}
		rest = gridTail().ReplaceAllString(rest, "")
		t, name, serves := play.A, "", play.NoTeam
		switch strings.ToLower(head[1]) {
		case "b":
			t = play.B
		case "receiving", "receive", "receivers", "r":
			name, serves = "receiving", play.B
		case "serving", "serve", "servers", "s":
			name, serves = "serving", play.A
		}
		if seen[t] && t == play.A && name != "" {
			t = play.B
			serves = serves.Other()
		}
		if seen[t] {
			return nil, false
		}
		seen[t] = true
		six, measured, ok := gridRows(rest)
		if !ok {
			return nil, false
		}
		if name != "" {
			out.Names[t] = []string{name}
			out = out.With(play.Key{Fact: court.ServingSide}, play.Value(serves.String()))
		}
		var from []court.Person
		for i, s := range six {
			if len(s.Feet) > 0 {
				from = append(from, court.Person{ID: t.String() + court.Position(i+1).String(), Team: t, Place: court.Position(i + 1), Feet: s.Feet})
			}
		}
		if len(from) < 2 || len(from) < 4 && !measured {
			return nil, false
		}
		if measured {
			out.People = append(out.People, from...)
			continue
		}
		out = relations(out, from)
	}
	return out, out.Check() == nil
}

// relations tells of people only how they stand to one another.
func relations(a *court.Alignment, from []court.Person) *court.Alignment {
	b := &court.Alignment{People: from}
	keys := b.Known()
	for _, p := range from {
		p.Feet = nil
		a.People = append(a.People, p)
	}
	for _, k := range keys {
		if k.Fact != court.StandsInside && k.Fact != court.StandsPlace {
			a = a.With(k, b.Get(k))
		}
	}
	return a
}

// gridRows reads the rows of a grid, or positions by lengths.
func gridRows(s string) (six court.Six, measured, ok bool) {
	var entries []string
	for e := range strings.FieldsFuncSeq(s, func(r rune) bool { return r == ';' || r == '\n' || r == ',' }) {
		entries = append(entries, strings.TrimSpace(e))
	}
	if len(entries) > 1 && placed().MatchString(entries[0]) {
		for _, e := range entries {
			m := placed().FindStringSubmatch(e)
			if m == nil {
				return six, false, false
			}
			at := &six[m[1][0]-'1']
			for foot := range strings.SplitSeq(m[2], " and ") {
				f := spotForm().FindStringSubmatch(strings.TrimSpace(foot))
				if f == nil || len(at.Feet) == 2 {
					return six, false, false
				}
				left, ok1 := signed(f[1])
				near, ok2 := signed(f[2])
				if !ok1 || !ok2 {
					return six, false, false
				}
				at.Feet = append(at.Feet, court.At(left, near))
			}
		}
		return six, true, true
	}
	rows := strings.FieldsFunc(s, func(r rune) bool { return r == '/' || r == '\n' })
	if len(rows) < 2 || len(rows) > 12 {
		return six, false, false
	}
	for y, row := range rows {
		cells := strings.Fields(row)
		if len(cells) == 1 {
			cells = strings.Split(cells[0], "")
		}
		for x, c := range cells {
			switch {
			case c == "." || c == "-" || c == "_":
			case len(c) == 1 && c[0] >= '1' && c[0] <= '6' && len(six[c[0]-'1'].Feet) < 2:
				i := c[0] - '1'
				six[i].Feet = append(six[i].Feet, court.At(court.Cm(100*x), court.Cm(100*y)))
			default:
				return six, false, false
			}
		}
	}
	return six, false, true
}

func signed(s string) (court.Length, bool) {
	rest, minus := strings.CutPrefix(s, "-")
	l, err := court.ParseLength(rest)
	if minus {
		l = -l
	}
	return l, err == nil
}
