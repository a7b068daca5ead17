package web

// kept holds the newest of what is put in it, by id.
type kept[T any] struct {
	most int
	ids  []string // oldest first
	all  map[string]T
}

func newKept[T any](most int) kept[T] { return kept[T]{most: most, all: map[string]T{}} }

func (k *kept[T]) get(id string) (T, bool) {
	v, ok := k.all[id]
	return v, ok
}

// put keeps something, in place of what had its id.
func (k *kept[T]) put(id string, v T) {
	if _, ok := k.all[id]; !ok {
		k.ids = append(k.ids, id)
	}
	k.all[id] = v
	for len(k.ids) > k.most {
		delete(k.all, k.ids[0])
		k.ids = k.ids[1:]
	}
}

// newest calls do from the newest on, until it returns false.
func (k *kept[T]) newest(do func(T) bool) {
	for i := len(k.ids) - 1; i >= 0; i-- {
		if !do(k.all[k.ids[i]]) {
			return
		}
	}
}
