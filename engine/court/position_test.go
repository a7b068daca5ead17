package court

import "testing"

func TestPositions(t *testing.T) {
	for _, p := range Positions() {
		q := p.Partner()
		if !p.OK() || q.Partner() != p || p.Front() == q.Front() || p.Lane() != q.Lane() {
			t.Errorf("%d: partner %d", p, q)
		}
		if p.Name() == "" {
			t.Errorf("%d has no name", p)
		}
		at := p
		for range 6 {
			at = at.Next()
		}
		if at != p {
			t.Errorf("%d: six rotations lead to %d", p, at)
		}
	}
	for _, p := range []Position{NoPosition, 7} {
		if p.OK() || p.Partner() != NoPosition || p.Next() != NoPosition || p.Name() != "" {
			t.Errorf("%d is no position", p)
		}
	}
}

// Rotated and Next agree: whoever is in p is in p.Next() after one rotation.
func TestRotated(t *testing.T) {
	six := [6]string{"1", "2", "3", "4", "5", "6"}
	for n := -7; n <= 7; n++ {
		got := Rotated(six, n)
		for _, p := range Positions() {
			at := p
			for range (n%6 + 6) % 6 {
				at = at.Next()
			}
			if got[at-1] != p.String() {
				t.Errorf("%d rotations: %v", n, got)
			}
		}
	}
	if got := Rotated(six, 1); got[0] != "2" || got[5] != "1" {
		t.Errorf("the right front rotates back to serve: %v", got)
	}
}
