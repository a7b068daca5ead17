package discordfake

import (
	"bufio"
	"crypto/sha1"
	"encoding/base64"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"strings"
	"sync"
	"time"
)

// wsConn is the server's end of a WebSocket (RFC 6455), as much of it as the
// gateway needs: text messages, no extensions.
type wsConn struct {
	conn net.Conn
	r    *bufio.Reader

	mu sync.Mutex // one frame at a time goes out
}

// Opcodes of frames.
const (
	frameText  = 0x1
	frameClose = 0x8
	framePing  = 0x9
	framePong  = 0xA
)

// maxFrame is the longest frame that is read.
const maxFrame = 1 << 20

// upgrade answers the handshake.
func upgrade(w http.ResponseWriter, r *http.Request) (*wsConn, error) {
	key := r.Header.Get("Sec-WebSocket-Key")
	if key == "" || !strings.EqualFold(r.Header.Get("Upgrade"), "websocket") {
		http.Error(w, "this is a WebSocket", http.StatusUpgradeRequired)
		return nil, errors.New("no WebSocket handshake")
	}
	conn, rw, err := http.NewResponseController(w).Hijack()
	if err != nil {
		return nil, err
	}
	sum := sha1.Sum([]byte(key + "258EAFA5-E914-47DA-95CA-C5AB0DC85B11")) // the protocol's own constant
	_, err = fmt.Fprintf(conn, "HTTP/1.1 101 Switching Protocols\r\nUpgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Accept: %s\r\n\r\n",
		base64.StdEncoding.EncodeToString(sum[:]))
	if err != nil {
		_ = conn.Close()
		return nil, err
	}
	return &wsConn{conn: conn, r: rw.Reader}, nil
}

// write sends one frame.
func (c *wsConn) write(op byte, data []byte) error {
	head := []byte{0x80 | op}
	switch n := len(data); {
	case n < 126:
		head = append(head, byte(n))
	case n < 1<<16:
		head = binary.BigEndian.AppendUint16(append(head, 126), uint16(n))
	default:
		head = binary.BigEndian.AppendUint64(append(head, 127), uint64(n))
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	if err := c.conn.SetWriteDeadline(time.Now().Add(5 * time.Second)); err != nil {
		return err
	}
	_, err := c.conn.Write(append(head, data...))
	return err
}

// close sends a code and ends the connection.
func (c *wsConn) close(code int, why string) {
	_ = c.write(frameClose, append(binary.BigEndian.AppendUint16(nil, uint16(code)), why...))
	_ = c.conn.Close()
}

// read gives the next text message; it answers pings by itself.
func (c *wsConn) read() ([]byte, error) {
	var message []byte
	for {
		var head [2]byte
		if _, err := io.ReadFull(c.r, head[:]); err != nil {
			return nil, err
		}
		n := uint64(head[1] & 0x7f)
		switch n {
		case 126:
			var b [2]byte
			if _, err := io.ReadFull(c.r, b[:]); err != nil {
				return nil, err
			}
			n = uint64(binary.BigEndian.Uint16(b[:]))
		case 127:
			var b [8]byte
			if _, err := io.ReadFull(c.r, b[:]); err != nil {
				return nil, err
			}
			n = binary.BigEndian.Uint64(b[:])
		}
		if n+uint64(len(message)) > maxFrame {
			return nil, errors.New("a message that is too long")
		}
		var mask [4]byte
		if head[1]&0x80 != 0 {
			if _, err := io.ReadFull(c.r, mask[:]); err != nil {
				return nil, err
			}
		}
		data := make([]byte, n)
		if _, err := io.ReadFull(c.r, data); err != nil {
			return nil, err
		}
		for i := range data {
			data[i] ^= mask[i%4]
		}
		switch head[0] & 0x0f {
		case frameClose:
			return nil, io.EOF
		case framePing:
			if err := c.write(framePong, data); err != nil {
				return nil, err
			}
		case framePong:
		default:
			message = append(message, data...)
			if head[0]&0x80 != 0 {
				return message, nil
			}
		}
	}
}
