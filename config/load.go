package config

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v3"
)

// largest is the size of a file that is still settings, in bytes.
const largest = 1 << 20

// A reader reads one file and reports all that is wrong with it.
type reader struct {
	file  string
	found []Finding
	files map[*Secret]string // the files that secrets are in
	lines map[string]int     // where each field stands
}

// Load reads the settings from a file, and the secrets from the environment or
// from the files that it names. No file (empty) gives the defaults: one
// association, on the local channels. The settings are of use only when
// nothing was found. What is missing for serving is told by [Config.Secrets].
func Load(file string, env func(string) string) (Config, []Finding) {
	r := &reader{file: file, files: map[*Secret]string{}, lines: map[string]int{}}
	c := Config{File: file}
	r.defaults("", place{c: &c})
	if file != "" {
		if root := r.parse(); root != nil {
			r.section("", "", root, place{c: &c})
		}
	}
	if len(c.Associations) == 0 {
		c.Associations = []Association{{}}
		r.defaults("associations[].", place{&c, &c.Associations[0]})
		c.Associations[0].ID = "local"
	}
	if c.Local == "" {
		c.Local = c.Associations[0].ID
	}
	r.agree(&c)
	r.secrets(&c, env)
	sortFindings(r.found)
	return c, r.found
}

// report adds a finding about a node.
func (r *reader) report(n *yaml.Node, field, what, mend string) {
	line := 0
	if n != nil {
		line = n.Line
	}
	r.found = append(r.found, Finding{Path: r.file, Line: line, Field: field, What: what, Mend: mend})
}

// parse reads the file's one mapping; nil when there is none to read.
func (r *reader) parse() *yaml.Node {
	f, err := os.Open(r.file)
	if err != nil {
		r.report(nil, "", cant(err), "name a file that is there, or leave it out to use the local channels only")
		return nil
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, largest+1))
	switch {
	case err != nil:
		r.report(nil, "", cant(err), "name a file that can be read")
		return nil
	case len(data) > largest:
		r.report(nil, "", "the file is too large for settings", "name the right file")
		return nil
	}
	dec := yaml.NewDecoder(bytes.NewReader(data))
	var doc, more yaml.Node
	if err := dec.Decode(&doc); err == io.EOF {
		return nil // empty: all defaults
	} else if err != nil {
		r.syntax(err)
		return nil
	}
	if err := dec.Decode(&more); err == nil {
		r.report(&more, "", "a second document begins here", "keep one, and take out the line ---")
	} else if err != io.EOF {
		r.syntax(err)
		return nil
	}
	root := doc.Content[0]
	if root.Kind == yaml.ScalarNode && root.Tag == "!!null" {
		return nil
	}
	return root
}

// cant is an error of reading a file, without the file's name.
func cant(err error) string {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "there is no such file"
	case errors.Is(err, fs.ErrPermission):
		return "the file may not be read"
	}
	if e, ok := errors.AsType[*fs.PathError](err); ok {
		err = e.Err
	}
	return "the file can't be read: " + err.Error()
}

var yamlLine = whenUsed(`^yaml: (?:line (\d+): )?`)

// syntax reports what the YAML reader did not understand. Its message may hold
// a piece of the file, but never a value.
func (r *reader) syntax(err error) {
	msg, line := err.Error(), 1
	if m := yamlLine().FindStringSubmatch(msg); m != nil {
		msg = msg[len(m[0]):]
		if m[1] != "" {
			line, _ = strconv.Atoi(m[1])
		}
	}
	r.report(&yaml.Node{Line: line}, "", "this is not YAML: "+msg, "look at this line and the one before: indent with spaces, and put text with : or # in quotes")
}

// defaults sets the defaults of the keys right under a prefix and in the
// sections under it that are not lists.
func (r *reader) defaults(prefix string, p place) {
	for _, k := range keys {
		if k.def == "" || !strings.HasPrefix(k.path, prefix) || strings.Contains(k.path[len(prefix):], "[]") {
			continue
		}
		if what, _ := k.kind.read(r, k.def, k.at(p)); what != "" {
			panic("config: the default of " + k.path + ": " + what)
		}
	}
}

// section reads the keys of a mapping. Prefix is how the table names them,
// field how they are named to a person.
func (r *reader) section(prefix, field string, n *yaml.Node, p place) {
	if n.Kind == yaml.AliasNode || n.Anchor != "" {
		r.report(n, strings.TrimSuffix(field, "."), "the file uses an anchor", "write the section out")
		return
	}
	if n.Kind != yaml.MappingNode {
		r.report(n, strings.TrimSuffix(field, "."), "this must be a section of keys, not a "+word(n), "write keys under it, indented, each with a colon")
		return
	}
	in, names := under(prefix)
	seen := map[string]int{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		name, v := n.Content[i], n.Content[i+1]
		if line, twice := seen[name.Value]; twice {
			r.report(name, field+name.Value, fmt.Sprintf("the key is there already, in line %d", line), "take one out")
			continue
		}
		seen[name.Value] = name.Line
		j := slices.Index(names, name.Value)
		if j < 0 {
			r.unknown(name, field, names)
			continue
		}
		r.lines[field+name.Value] = name.Line
		r.value(in[j], field+name.Value, v, p)
	}
	for _, k := range in {
		name := k.path[len(prefix):]
		if k.need && seen[name] == 0 {
			r.report(n, field+name, "the key is missing", "add it: "+k.doc)
		}
	}
}

func (r *reader) unknown(name *yaml.Node, field string, names []string) {
	what, mend := "there is no such key", "use one of "+strings.Join(names, ", ")
	switch near := nearest(name.Value, names); {
	case looksSecret(name.Value) || name.Kind != yaml.ScalarNode:
		r.report(name, strings.TrimSuffix(field, "."), what, mend)
		return
	case slices.Contains(names, name.Value+"_file"):
		what, mend = "secrets do not belong in this file", "put it in a file of its own and name that with "+name.Value+"_file, or set it in the environment"
	case near != "":
		mend = "write " + near + ", if that is meant"
	}
	r.report(name, field+name.Value, what, mend)
}

// value reads one key's value.
func (r *reader) value(k key, field string, n *yaml.Node, p place) {
	switch {
	case k.path == "associations":
		r.associations(field, n, p)
	case k.at == nil:
		r.section(k.path+".", field+".", n, p)
	case k.kind.list:
		if n.Kind != yaml.SequenceNode || n.Anchor != "" {
			r.report(n, field, "this must be a list, not a "+word(n), "put its members in brackets, with commas between")
			return
		}
		for i, m := range n.Content {
			r.single(k, fmt.Sprintf("%s[%d]", field, i), m, p)
		}
	default:
		r.single(k, field, n, p)
	}
}

func (r *reader) single(k key, field string, n *yaml.Node, p place) {
	s, what, mend := scalar(k.kind, n)
	if token(s) || k.kind.name == secret.name && looksSecret(s) {
		what, mend = "a token does not belong in this file", "put it in a file of its own or in the environment; whoever read this file knows it, so make a new one"
	}
	if what == "" {
		what, mend = k.kind.read(r, s, k.at(p))
	}
	if what != "" {
		r.report(n, field, what, mend)
	}
}

func (r *reader) associations(field string, n *yaml.Node, p place) {
	if n.Kind != yaml.SequenceNode || n.Anchor != "" || len(n.Content) == 0 {
		r.report(n, field, "this must be a list of associations", "begin each with a hyphen: - id: riverside")
		return
	}
	// Made at once: secrets are remembered by where they go.
	p.c.Associations = make([]Association, len(n.Content))
	for i, m := range n.Content {
		a := place{p.c, &p.c.Associations[i]}
		r.defaults("associations[].", a)
		at := fmt.Sprintf("%s[%d]", field, i)
		r.lines[at] = m.Line
		r.section("associations[].", at+".", m, a)
	}
}
